import type { bowl as english } from '../en/bowl';
import type { Part } from '../types';
import { n } from './count';

export const bowl: Part<typeof english> = {
  'bowl.which': 'Welche Schale',
  'bowl.counter': (b: string) => `Schale ${b} wiegen`,
  'bowl.not_begun': 'Noch nichts zu mischen',
  'bowl.not_begun_text':
    'Eine Schale wird gemischt, wenn sie dran ist, nicht früher. Mit der Uhr beginnen; die Schalen des Plans kommen hierher.',
  'bowl.add': 'hineingeben',
  'bowl.more': (has: string, all: string) => `noch mehr: ${has} von ${all} sind drin`,
  'bowl.scale_shows': 'Die Waage zeigt',
  'bowl.scale_tared': (g: string) => `Die Waage zeigt (Tara ${g})`,
  'bowl.tare': 'Tara',
  'bowl.next': 'Ist drin',
  'bowl.not_grams': 'Gramm eingeben, zum Beispiel 12,5.',
  'bowl.full': 'Alles ist drin',
  'bowl.again': 'Noch etwas mischen',
  'bowl.booked': (g: string, name: string) => `${g} ${name} vermerkt.`,
  'bowl.how_much': 'Wie viel von der Schale',
  'bowl.whole': 'ganz',
  'bowl.too_much': (g: string, name: string) => `${g} zu viel ${name}`,
  'bowl.moves': (zone: string, levels: string, lab: string) =>
    `So gelassen ändert sich ${zone} am meisten: um ${n.tonhöhen(levels)} (Farbunterschied ${lab}).`,
  'bowl.passes_rule':
    'So verstößt diese Schale gegen eine Regel. Die anderen Teile anpassen oder neu mischen.',
  'bowl.not_predicted': 'Was das mit der Farbe macht, lässt sich jetzt nicht sagen.',
  'bowl.predicting': 'Die Farbe wird vorhergesagt',
  'bowl.scale_up': (g: string) => `Die anderen anpassen: zusammen ${g} mehr`,
  'bowl.leave_it': 'So lassen',
  'bowl.follows': (b: string) => `Schale ${b}: die anderen Teile sind angepasst.`,
  'bowl.stays': (b: string) => `Schale ${b} bleibt so.`,
  'bowl.label': 'Etikett der Schale',
  'bowl.not_mixed': 'noch nicht gemischt',
  'bowl.print': 'Etikett drucken',
  'bowl.left': 'Rest in der Schale',
  'bowl.left_was': (g: string) => `Rest in der Schale (${g})`,
  'bowl.keep_left': 'Rest vermerken',
  'bowl.left_kept': (g: string) => `${g} Rest, vermerkt.`,
  'bowl.wipe': 'Bildschirm abwischen',
  'bowl.wiping': 'Jetzt abwischen: nichts reagiert',
  'bowl.wipe_end': 'Finger hier halten, um gleich weiterzumachen',
};
