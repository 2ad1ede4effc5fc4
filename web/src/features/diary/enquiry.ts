import type { PlanAnswer, Span, Visit } from '../../api/types';
import { asUsual } from '../../visit/asked';
import { daysAfter } from '../../visit/civil';

export const lengths = ['short', 'shoulder', 'long'] as const;
export const was = ['natural', 'tinted', 'lightened'] as const;
export const wishes = ['roots', 'darker', 'lighter'] as const;

/** Hair in three answers, as somebody says it on the telephone. */
export interface Enquiry {
  long: (typeof lengths)[number];
  was: (typeof was)[number];
  wish: (typeof wishes)[number];
}

/** What the answers are taken for: priors of this page, for an estimate only. Spread in brackets. */
const TAKEN = {
  /** Stretched hair, cm (4, 6, 10). */
  cm: { short: 8, shoulder: 28, long: 48 },
  /** Five to six weeks of growth, cm (0.7). */
  regrowthCm: 1.5,
  /** Level of what grows, and of lengths (1.5, 1.5, 1). */
  level: { natural: 5, tinted: 6, lightened: 8 },
  /** White fibres of natural hair, % (20). */
  white: 25,
  /** Levels that darker and lighter mean where nobody says by how much (1). */
  step: 2,
  /** Scalp that carries hair, cm2 (60). */
  scalpCm2: 550,
};
const level = (wanted: number) => Math.min(10, Math.max(1, wanted));

/**
 * A head like what was said, with its test taken to be read and clear: for an estimate, never for a plan. What stands
 * at the chair is read at the chair.
 */
export function headOf({ long, was: on, wish }: Enquiry, day: string, lead: number, shelf: string): Visit {
  const [natural, rest] = [TAKEN.level.natural, TAKEN.level[on]];
  const step = { roots: 0, darker: -TAKEN.step, lighter: TAKEN.step }[wish];
  const { white, regrowthCm } = TAKEN;
  const old: Partial<Span> =
    on === 'natural' ? { white_percent: white } : { origin: on, natural_level: natural };
  const spans: Span[] = [
    { id: 'regrowth', from_cm: 0, to_cm: regrowthCm, level: natural, white_percent: white },
    { id: 'lengths', from_cm: regrowthCm, to_cm: TAKEN.cm[long], level: rest, ...old },
  ];
  const scalp_cm2 = TAKEN.scalpCm2 / 2;
  return {
    schema: 'strandline.visit/1',
    client: '',
    date: day,
    skin_test: daysAfter(day, -lead - 1),
    test: { read: daysAfter(day, -1), result: 'clear' },
    answers: asUsual,
    head: {
      areas: [
        { id: 'front', kind: 'sides', scalp_cm2, spans },
        { id: 'back', kind: 'crown', scalp_cm2, spans },
      ],
    },
    aims: [{ zone: '*', level: level(rest + step), tone: 'natural' }],
    shelf,
    policy: 'house',
  };
}

/** By which minutes are told to somebody who asks. */
const GRID_MIN = 5;

/** Minutes as a day mostly goes, rounded up. */
export function minutesOf({ timeline: { finish_mean, finish_min } }: PlanAnswer): number {
  return Math.ceil((finish_mean > 0 ? finish_mean : finish_min) / GRID_MIN) * GRID_MIN;
}
