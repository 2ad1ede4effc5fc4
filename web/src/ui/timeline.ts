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

/** The longest of `words` that fits `width` pixels at 13 px type; empty when none does. */
export function fitText(words: readonly string[], width: number, perLetter = 7.1): string {
  return words.find((word) => word.length * perLetter <= width) ?? '';
}

/** The letters that stand for words where nothing longer fits, in the order in which they first appear. */
export function lettersUsed(lanes: readonly Lane[], shown: (stretch: Stretch) => string): [string, string][] {
  const used = new Map<string, string>();
  for (const stretch of lanes.flatMap((lane) => lane.stretches)) {
    if (stretch.shorter?.length !== 2) continue;
    const [letter, word] = [shown(stretch), stretch.shorter[0] ?? ''];
    if (letter && letter !== stretch.text && letter !== word && !used.has(letter)) used.set(letter, word);
  }
  return [...used];
}
