import type { Body } from '../api/facts';
import type { Timeline } from '../api/types';

export type Feels = Body<'comfort'>['feels'];
export const feelings: readonly Feels[] = ['well', 'cold', 'warm', 'itches', 'stings'];

/** Minutes after which the client is asked again how it feels (prior), and after an answer that was not good. */
export const EVERY_MIN = 10;
export const UNEASY_MIN = 5;

/** An answer, at a minute of the visit. */
export interface Asked {
  at: number;
  feels: Feels;
}

/** From when until when anything is on the head, minutes of the visit. */
export function stretches(timeline: Timeline): { from: number; until: number }[] {
  const out: { from: number; until: number }[] = [];
  for (const d of timeline.developments.toSorted((a, b) => a.first_touch - b.first_touch)) {
    const last = out.at(-1);
    if (last && d.first_touch <= last.until) last.until = Math.max(last.until, d.leaves_at);
    else out.push({ from: d.first_touch, until: d.leaves_at });
  }
  return out;
}

/** The newest answer of a stretch; of two in the same moment the one that was told later. */
export function lastOf(
  asked: readonly Asked[],
  { from, until }: { from: number; until: number },
): Asked | undefined {
  return asked
    .filter((one) => one.at >= from && one.at <= until)
    .reduce<Asked | undefined>((last, one) => (last && last.at > one.at ? last : one), undefined);
}

/** When the client is to be asked: while anything is on, some minutes after the last answer, then again and again. */
export function toAsk(timeline: Timeline, asked: readonly Asked[]): number[] {
  return stretches(timeline).flatMap((stretch) => {
    const { from, until } = stretch;
    const last = lastOf(asked, stretch);
    const out: number[] = [];
    const first = last
      ? last.at + (['well', 'cold'].includes(last.feels) ? EVERY_MIN : UNEASY_MIN)
      : from + EVERY_MIN;
    for (let at = first; at < until; at += EVERY_MIN) out.push(at);
    return out;
  });
}
