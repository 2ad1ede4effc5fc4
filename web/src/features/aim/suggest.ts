import type { Head, Tone } from '../../api/types';
import { readSpan } from '../../visit/reading';
import { half } from '../../visit/words';

/** House words for how a person looks. What follows from them is common practice, a hint and no more. */
export const skins = ['rosy', 'even', 'golden', 'olive'] as const;
export const contrasts = ['soft', 'clear', 'strong'] as const;
export type Skin = (typeof skins)[number];
export type Contrast = (typeof contrasts)[number];

/** Common practice: cool tones beside rosy skin, warm ones beside golden, quiet ones beside olive. */
const tonesFor: Record<Skin, readonly Tone[]> = {
  rosy: ['ash', 'violet', 'beige'],
  even: ['natural', 'beige', 'gold'],
  golden: ['gold', 'copper', 'beige'],
  olive: ['natural', 'ash', 'gold'],
};

/** How far from today's level: common practice, in whole levels. */
const stepsFor: Record<Contrast, readonly number[]> = {
  soft: [0, 1],
  clear: [-1, 0, 1],
  strong: [-2, 2],
};

export interface Suggestion {
  level: number;
  tone: Tone;
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

/** Wishes that house words call to mind: those within reach first, then those that need no lighter hair than today's. */
export function suggestions(
  head: Head,
  skin: Skin,
  contrast: Contrast,
  inReach?: (level: number, tone: Tone) => boolean,
): Suggestion[] {
  const today = levelToday(head);
  const levels = stepsFor[contrast].map((step) => Math.round(today) + step).filter((l) => l >= 1 && l <= 10);
  return levels
    .flatMap((level) =>
      tonesFor[skin].map((tone) => ({
        level,
        tone,
        lighter: level > today,
        ...(inReach ? { reachable: inReach(level, tone) } : {}),
      })),
    )
    .sort(
      (a, b) =>
        Number(a.reachable === false) - Number(b.reachable === false) ||
        Number(a.lighter) - Number(b.lighter),
    );
}
