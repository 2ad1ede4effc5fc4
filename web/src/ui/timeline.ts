/** One stretch of a lane, in minutes from the start of the plan. */
export interface Stretch {
  id: string;
  start: number;
  end: number;
  text: string;
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

/** As much of `text` as fits `width` pixels at 13 px type, ended by "…"; empty when nothing sensible fits. */
export function fitText(text: string, width: number, perLetter = 6.9): string {
  const room = Math.floor(width / perLetter);
  if (text.length <= room) return text;
  return room < 4 ? '' : `${text.slice(0, room - 1).trimEnd()}…`;
}
