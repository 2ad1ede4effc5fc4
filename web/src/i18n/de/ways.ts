import type { ways as english } from '../en/ways';
import type { Part } from '../types';
import { n } from './count';

export const ways: Part<typeof english> = {
  'ways.title': 'Andere Wege',
  'ways.lead': 'Im Ganzen schlechter, in einem besser.',
  'ways.none': 'Kein anderer Weg ist schonender, einfacher oder günstiger und noch nahe am Wunsch.',
  'ways.gentler': 'Schonender für das Haar',
  'ways.simpler': 'Einfacher zu mischen',
  'ways.cheaper': 'Günstiger',
  'ways.fewer_bowls': 'Weniger Schalen',
  'ways.later_on_lengths': 'Dieselbe Mischung, später auf die Längen',
  'ways.nearer': (levels) => `${n.tonhöhen(levels)} näher am Wunsch`,
  'ways.quicker': 'Früher ausgespült',
  'ways.softer_line': 'Ein weicherer Ansatz',
  'ways.closer': 'Feinere Gramm, näher am Wunsch',
  'ways.other': 'Ein anderer Weg',
  'ways.same': 'kaum anders',
  'ways.quarter': 'etwa eine Vierteltonhöhe daneben',
  'ways.half': 'etwa eine halbe Tonhöhe daneben',
  'ways.one': 'etwa eine Tonhöhe daneben',
  'ways.more': 'mehr als eine Tonhöhe daneben',
  'ways.figure': (words, levels) => `${words} (${n.tonhöhen(levels)})`,
  'ways.cost': (cost, grams) => `${cost} für ${grams}`,
  'ways.bowl': (label, grams, where) => `Schale ${label}, ${grams}: ${where}`,
  'ways.look': 'Ansehen',
  'ways.looking': (way) => `Sie sehen einen anderen Weg, nicht den Plan: ${way}`,
  'ways.working': (way) => `Rechnet einen anderen Weg aus: ${way}`,
  'ways.failed': (way) => `Dieser Weg ließ sich gerade nicht ausrechnen: ${way}. Sie sehen den Plan.`,
  'ways.back': 'Zurück zum Plan',
  'ways.take': 'Diesen nehmen',
  'ways.taken': (way) => `Diese Schalen sind jetzt der Plan: ${way}.`,
};
