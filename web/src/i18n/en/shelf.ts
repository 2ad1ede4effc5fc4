/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** The salon’s shelves: what is wrong with one, and what to do. */
export const shelf = {
  'problem.shelf_not_found': () => 'There is no such shelf here. Choose another.',
  'problem.shelf_is_demo': () => 'The demo shelf is invented and is not edited. Copy it.',
  'problem.shelf_id_taken': () => 'There is a shelf of that name already. Save again.',
  'problem.shelf_changed_elsewhere': () =>
    'Another device changed this shelf meanwhile. Nothing is lost: keep yours or take theirs.',
  'problem.range_is_empty': (p: P) => `Nothing stands in “${of(p, 'range')}” yet. Add its shades.`,
  'problem.no_developer_for': (p: P) =>
    `“${of(p, 'range')}” is mixed with developer of ${of(p, 'strengths')} %, and none stands on the shelf. Add the bottles.`,
  'problem.no_level': (p: P) =>
    `No level in “${of(p, 'text')}”. Write a whole number, as in “7 copper”; a code is never read.`,
  'problem.no_tone': (p: P) =>
    `No tone in “${of(p, 'text')}”. Write natural, ash, violet, beige, gold, copper, red or green, or clear.`,
  'problem.two_tones': (p: P) =>
    `More than one tone in “${of(p, 'text')}”. Put the stronger one into a column headed “tone”.`,
  'problem.no_name': () => 'This line names nothing. Write what it is called.',
  'problem.no_strength': (p: P) =>
    `No strength in “${of(p, 'text')}”. Write its percentage, as in “developer 6 %”.`,
  'problem.not_a_number_here': (p: P) =>
    `“${of(p, 'text')}” is no number. Write one, or leave the cell empty.`,
  'problem.thousands_or_not': (p: P) => `“${of(p, 'text')}” may be a thousand or one. Write 1000, or 1.0.`,
  'problem.price_without_package': () =>
    'A price without the grams of its package. Say the grams for all of them below, or in a column.',
  'problem.line_twice': (p: P) => `The same product as in line ${of(p, 'line')}. Remove one of the two.`,
  'problem.too_many_cells': () =>
    'More cells than the first line has. Put quotes around text that holds the separator.',
  'problem.quote_not_closed': () => 'A quote is not closed. Add it where the cell ends.',
} as const;
