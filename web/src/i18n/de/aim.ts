export const aim = {
  'reach.in': 'heute erreichbar',
  'reach.out': 'heute nicht in einem Zug',
  'reach.cell_out': (cell: string) => `${cell}: heute nicht in einem Zug`,
  'reach.no_promise': 'Eine Vorhersage aus Lesung und diesem Regal; nichts ist versprochen.',
  'reach.not_today': (words: string) => `Heute nicht in einem Zug: ${words}`,
  'reach.working': 'Rechnet aus, was erreichbar ist',
  'aim.reachable': 'heute erreichbar',
  'aim.nearest': (words: string) => `heute am nächsten: ${words}`,
};
