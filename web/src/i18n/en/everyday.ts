/** Tests, looks, enquiries and cards. */
export const everyday = {
  'diary.as_last': 'As last time',
  'clients.card': 'A paper card, or a list',
  'clients.card_name': 'Name on the card',
  'clients.card_date': 'Date of the last entry',
  'clients.card_text': 'What stands on it',
  'clients.card_keep': 'Keep the card',
  'clients.list':
    'A list as CSV, with a line of headings: name, contact, text, date; other columns go to the text',
  'clients.list_choose': 'Choose a list',
  'clients.list_none': 'No heading of this list is “name”.',
  'clients.cards': 'From cards and lists',
  'home.cut': 'Cut off since',
  'clients.list_keep': 'Keep the list',
  'bundle.batches': 'Batches that the bowls took',
  'bundle.head': 'The visit as it was written',
  'bundle.failed': 'The file could not be made.',
  'bundle.make': 'For insurer or maker: all of it in one file',
  'bundle.title': 'All that is kept of a visit',
  'clients.list_nameless': (count: number) => `Without a name, left out: ${count}`,
  'clients.list_read': (count: number) =>
    count === 1 ? '1 client is in it. Keep it?' : `${count} clients are in it. Keep them?`,
  'clients.added': (count: number) => `Kept: ${count}`,
} as const;
