import { n } from './count';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** What results taught, and swatches that were measured. */
export const learned = {
  'learned.here': 'Results changed this plan',
  'learned.look': 'Look, or take a result out',
  'learned.moved': (zone: string, before: string, now: string) =>
    `${zone}: level ${before} without results, ${now} with them`,
  'learned.title': 'What results taught',
  'learned.lead':
    'Each result changes what is foreseen next: for a range, for a client, for the eye of a colourist.',
  'learned.words': 'Learned so far',
  'learned.nothing': 'Nothing yet that is certain enough and larger than a fifth of a level.',
  'learned.drift': 'Seen against foreseen',
  'learned.drift_note':
    'Each point is a zone of a result: above the line it came out lighter than foreseen, below it darker, in levels. Nine in ten should lie in the band. Open points taught nothing.',
  'learned.drift_said': (within: string, all: string) =>
    `${within} of ${all} results lay in the stated range.`,
  'learned.results': 'Results, newest first',
  'learned.seen': (foreseen: string, seen: string) => `foreseen level ${foreseen}, seen ${seen}`,
  'learned.set_aside': 'Too far off: looked at, not learned from.',
  'learned.without': 'Taken out: everything was learned again without it.',
  'learned.take_out': 'Take out',
  'learned.take_in': 'Take in again',
  'learned.more': 'Older results',
  'learned.failed': 'What was learned could not be opened.',
  'learned.failed_kept': 'Every result is kept.',
  'learned.of_salon': 'In this salon',
  'learned.of_range': (name: string) => `Range ${name}`,
  'learned.of_person': 'This client',
  'learned.of_colourist': 'One colourist',
  'learned.deeper': (levels: string) => `takes ${n.levels(levels)} deeper than foreseen`,
  'learned.lighter': (levels: string) => `takes ${n.levels(levels)} lighter than foreseen`,
  'learned.lifts_more': (levels: string) => `lifts ${n.levels(levels)} more than foreseen`,
  'learned.lifts_less': (levels: string) => `lifts ${n.levels(levels)} less than foreseen`,
  'learned.warmer': (levels: string) => `comes out warmer than foreseen (${levels})`,
  'learned.cooler': (levels: string) => `comes out cooler than foreseen (${levels})`,
  'learned.reads_light': (levels: string) => `reads ${n.levels(levels)} lighter than the others`,
  'learned.reads_dark': (levels: string) => `reads ${n.levels(levels)} darker than the others`,
  'reading.measured': (l: string, a: string, b: string) =>
    `measured last time: L* ${l} · a* ${a} · b* ${b}; it counts until level or tone is read anew`,
  'swatches.title': 'Measured swatches',
  'swatches.lead':
    'On white hair, by the usual process of this range. From three measured swatches on, the rest of the line follows them.',
  'swatches.measured': (some: string, all: string) => `${some} of ${all} shades measured`,
  'swatches.text': 'An instrument’s file, or code; L*; a*; b* line by line (D65, 10°)',
  'swatches.file': 'Open a file',
  'swatches.look': 'Read',
  'swatches.next': 'Which to measure next?',
  'swatches.keep': (count: string) => `Keep ${count}`,
  'swatches.matched': (count: string, names: string) => `${count} understood: ${names}`,
  'swatches.unmatched': (names: string) => `No single shade of this range is called so: ${names}`,
  'swatches.other_light':
    'The file gives L*a*b* for another light than D65 and 10°. They are taken as they are; export spectra where the instrument can.',
  'swatches.measure_next': (names: string) => `These would say most of the others: ${names}`,
  'swatches.broken': (line: string) =>
    `Line ${line} cannot be read as a measurement. Mend it, or export the file again.`,
  'card.title': 'By a photo of the printed card',
  'card.lead':
    'Print the card at its size and lay the swatch behind its window, so that it fills it. Photograph it from above by daylight, all four corners in the picture, without a shadow across it.',
  'card.print': 'Open the card to print it',
  'card.patches': 'The card’s patches as an instrument measured them (once per printed card)',
  'card.patches_note': 'Without them the swatch is only compared with the patches beside it.',
  'card.photo': 'Photo of the card',
  'card.reading': 'The photo is being read …',
  'card.level': (level: string) => `level ${level}`,
  'card.off': (amount: string) => `off by up to ΔE00 ${amount}, nine times in ten`,
  'card.lab_alone':
    'The card’s file has L*a*b* alone: what ink and hair differ by under this lamp is not taken out. Spectra say more.',
  'card.only_alike': (nearest: string, next: string) =>
    `Nobody measured this card. Most like patch ${nearest}, then ${next}; nothing in numbers.`,
  'card.is_lighter': (patch: string) => `It is lighter than ${patch}.`,
  'card.is_darker': (patch: string) => `It is darker than ${patch}.`,
  'card.of': 'Swatch of',
  'card.which': 'Which shade?',
  'card.take': 'Put into the list',
  'problem.card_not_found': () =>
    'The card is not in the picture, or not whole. All four corner marks must be seen, sharp and without a shadow across them.',
  'problem.card_small': () => 'The card is too small in the picture. Go nearer.',
  'problem.card_picture': () => 'The picture has no pixels. Take it again.',
  'problem.card_clipped': () =>
    'The card’s white is at its brightest. Take it again with less light on the card.',
  'problem.card_dark': () => 'The card is too dark. Take it again with more light.',
  'problem.card_uneven': () =>
    'The light falls off over the card. Turn it to the window, away from lamps near by.',
  'problem.card_strand_clipped': () =>
    'The strand is at the end of what the photo can tell. Take it again by daylight, with more light or less.',
  'problem.card_patches_missing': (p: P) =>
    `${of(p, 'count')} patches are not in the card’s file: ${of(p, 'ids')} … Name the samples as the card’s rows and columns, A2 to F8.`,
  'problem.picture_kind': () => 'This is no photo that can be read. Take a JPEG.',
  'problem.picture_large': () => 'The photo is too large.',
  'problem.picture_small': () => 'The photo is too small: at least 400 pixels each way.',
  'problem.picture_broken': () => 'The photo cannot be unpacked. Copy it again from the camera.',
  'problem.measured_nothing': () =>
    'There are neither spectra nor L*a*b* in it. Columns need wavelengths from 400 to 700 nm, or L*, a* and b*.',
  'problem.measured_impossible': (p: P) =>
    `Line ${of(p, 'line')}: ${of(p, 'field')} cannot be ${of(p, 'got')}.`,
  'problem.lab_typed': (p: P) => `“${of(p, 'got')}” is not L*a*b*. Write three numbers: 54.2 8.1 19.6.`,
  'problem.result_not_found': () => 'This result is not there any more. Load the page again.',
} as const;
