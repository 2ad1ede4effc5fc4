import type { Head, Tone } from '../../api/types';
import { readSpan } from '../../visit/reading';
import { half } from '../../visit/words';

/** Words for hair, beside what it is today. What follows from them is a start to talk from, and no more. */
export const depths = ['darker', 'same', 'lighter'] as const;
export const warmths = ['cool', 'neutral', 'warm'] as const;
export type Depth = (typeof depths)[number];
export type Warmth = (typeof warmths)[number];

/** One tone or two; the first leads. */
const tonesFor: Record<Warmth, readonly (readonly [Tone, Tone?])[]> = {
  cool: [['violet'], ['ash'], ['violet', 'ash']],
  neutral: [['natural'], ['beige'], ['beige', 'ash']],
  warm: [['gold'], ['copper'], ['gold', 'copper'], ['copper', 'red']],
};

/** How far from today's level, in whole levels. */
const stepsFor: Record<Depth, readonly number[]> = { darker: [-1, -2], same: [0], lighter: [1, 2] };

export interface Suggestion {
  level: number;
  tone: Tone;
  second?: Tone;
  lighter: boolean;
  /** Every asked zone reaches it today; undefined while nobody knows. */
  reachable?: boolean;
}

/** The level most of the head's length has today; the darker of two that are alike. */
export function levelToday(head: Head): number {
  const cm = new Map<number, number>();
  for (const span of head.areas.flatMap((area) => area.spans)) {
    const level = half(readSpan(span).level);
    cm.set(level, (cm.get(level) ?? 0) + span.to_cm - (span.from_cm ?? 0));
  }
  const sorted = [...cm].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  return sorted[0]?.[0] ?? 5;
}

/** Targets that these words call to mind: those within reach first. */
export function suggestions(
  head: Head,
  depth: Depth,
  warmth: Warmth,
  inReach?: (level: number, tone: Tone) => boolean,
): Suggestion[] {
  const today = levelToday(head);
  const wanted = stepsFor[depth].map((step) => Math.min(10, Math.max(1, Math.round(today) + step)));
  return [...new Set(wanted)]
    .flatMap((level) =>
      tonesFor[warmth].map(([tone, second]) => ({
        level,
        tone,
        ...(second ? { second } : {}),
        lighter: level > today,
        ...(inReach ? { reachable: inReach(level, tone) } : {}),
      })),
    )
    .sort((a, b) => Number(a.reachable === false) - Number(b.reachable === false));
}
