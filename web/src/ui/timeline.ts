/** One stretch of a lane, in minutes from the start of the plan. */
export interface Stretch {
  id: string;
  start: number;
  end: number;
  text: string;
  /** The same in fewer letters, longest first, for a stretch too short for all of it. */
  shorter?: readonly string[];
  /** Latest end that is still allowed; drawn as an open tail after `end`. */
  latest?: number;
}

/** A row of the timeline: somebody's hands, or a bowl developing on hair. */
export interface Lane {
  id: string;
  label: string;
  kind: 'hands' | 'bowl';
  stretches: Stretch[];
}

/** End of the last stretch (open tails included); at least 1 so that a scale exists. */
export function lastMinute(lanes: readonly Lane[]): number {
  return Math.max(
    1,
    ...lanes.flatMap((lane) => lane.stretches.map((s) => Math.max(s.end, s.latest ?? s.end))),
  );
}

/** Minutes between two ticks so that neighbouring labels keep `room` pixels apart. */
export function tickStep(minutes: number, width: number, room = 64): number {
  const steps = [5, 10, 15, 30, 60, 120];
  return steps.find((step) => (step / minutes) * width >= room) ?? 240;
}

/** Tick minutes from 0 to `minutes`. */
export function ticks(minutes: number, width: number): number[] {
  const step = tickStep(minutes, width);
  return Array.from({ length: Math.floor(minutes / step) + 1 }, (_, i) => i * step);
}

/** Width of one letter of a lane, px, and of the narrowest box that holds one. */
const LETTER = 7.6;
const NARROWEST = 14;

/** Width at which a stretch is drawn: true to time, or wide enough for a letter where nothing follows at once. */
export function drawnWidth(stretch: Stretch, lane: Lane, perMinute: number): number {
  const own = (stretch.end - stretch.start) * perMinute - 2;
  const next = Math.min(...lane.stretches.map((s) => s.start).filter((start) => start > stretch.start));
  const room = Number.isFinite(next) ? (next - stretch.start) * perMinute - 2 : NARROWEST;
  return Math.max(own, Math.min(NARROWEST, room), 3);
}

/** The longest of `words` that fits a box `width` pixels wide at 13 px type; empty when none does. */
export function fitText(words: readonly string[], width: number): string {
  // Words stand off the edge; one or two letters stand in the middle and need no room beside them.
  const needs = (word: string) => word.length * LETTER + (word.length <= 2 ? 2 : 8);
  return words.find((word) => needs(word) <= width) ?? '';
}

/** The letters that stand for words where nothing longer fits, in the order in which they first appear. */
export function lettersUsed(
  lanes: readonly Lane[],
  shown: (stretch: Stretch, lane: Lane) => string,
): [string, string][] {
  const used = new Map<string, string>();
  for (const [stretch, lane] of lanes.flatMap((lane) => lane.stretches.map((s) => [s, lane] as const))) {
    if (stretch.shorter?.length !== 2) continue;
    const [letter, word] = [shown(stretch, lane), stretch.shorter[0] ?? ''];
    if (letter && letter !== stretch.text && letter !== word && !used.has(letter)) used.set(letter, word);
  }
  return [...used];
}
