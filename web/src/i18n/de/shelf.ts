import type { shelf as words } from '../en/shelf';
import type { Part } from '../types';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** The salon’s shelves: what is wrong with one, and what to do. */
export const shelf: Part<typeof words> = {
  'problem.shelf_not_found': () => 'Dieses Regal gibt es hier nicht. Ein anderes wählen.',
  'problem.shelf_is_demo': () => 'Das Demoregal ist erfunden und wird nicht geändert. Bitte kopieren.',
  'problem.shelf_id_taken': () => 'Ein Regal mit diesem Namen gibt es schon. Noch einmal speichern.',
  'problem.shelf_changed_elsewhere': () =>
    'Ein anderes Gerät hat dieses Regal inzwischen geändert. Nichts ist verloren: eigenes behalten oder das andere nehmen.',
  'problem.range_is_empty': (p: P) => `In „${of(p, 'range')}“ steht noch nichts. Nuancen hinzufügen.`,
  'problem.no_developer_for': (p: P) =>
    `„${of(p, 'range')}“ wird mit Entwickler von ${of(p, 'strengths')} % gemischt, und keiner steht im Regal. Flaschen hinzufügen.`,
  'problem.no_level': (p: P) =>
    `Keine Tonhöhe in „${of(p, 'text')}“. Eine ganze Zahl schreiben, etwa „7 Kupfer“; ein Code wird nie gedeutet.`,
  'problem.no_tone': (p: P) =>
    `Keine Farbrichtung in „${of(p, 'text')}“. Natur, Asch, Violett, Beige, Gold, Kupfer, Rot oder Grün schreiben, oder klar.`,
  'problem.two_tones': (p: P) =>
    `Mehr als eine Farbrichtung in „${of(p, 'text')}“. Die stärkere in eine Spalte „Farbrichtung“ setzen.`,
  'problem.no_name': () => 'Diese Zeile nennt nichts. Den Namen schreiben.',
  'problem.no_strength': (p: P) =>
    `Keine Stärke in „${of(p, 'text')}“. Die Prozente schreiben, etwa „Entwickler 6 %“.`,
  'problem.not_a_number_here': (p: P) =>
    `„${of(p, 'text')}“ ist keine Zahl. Eine schreiben oder die Zelle leer lassen.`,
  'problem.thousands_or_not': (p: P) =>
    `„${of(p, 'text')}“ kann tausend oder eins sein. 1000 schreiben, oder 1,0.`,
  'problem.price_without_package': () =>
    'Ein Preis ohne Gramm der Packung. Die Gramm unten für alle angeben oder in einer Spalte.',
  'problem.line_twice': (p: P) => `Dasselbe Mittel wie in Zeile ${of(p, 'line')}. Eine der beiden entfernen.`,
  'problem.too_many_cells': () =>
    'Mehr Zellen als in der ersten Zeile. Text mit dem Trennzeichen in Anführungszeichen setzen.',
  'problem.quote_not_closed': () => 'Ein Anführungszeichen ist offen. Am Ende der Zelle schließen.',
};
