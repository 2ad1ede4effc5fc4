import type { Timeline, TimelineTask } from '../api/types';

/** A client on the clock of one colourist: the minutes are those of the first client's visit. */
export interface OnClock {
  timeline: Timeline;
  /** Labels of bowls that lighten: over those nobody turns to somebody else. */
  lightens: ReadonlySet<string>;
}

/** Two tasks that want the same hands. */
export interface Clash {
  first: TimelineTask;
  second: TimelineTask;
}

/** What happens to the second client when the first runs late. */
export interface WhenLate {
  /** How much later the second is finished, minutes. */
  waits: number;
  /** What would stay on for longer than it may, and by how many minutes. */
  over: { zone: string; bowl: string; minutes: number }[];
  /** Minutes for which somebody else's hands would keep from a lightener. */
  unwatched: number;
}

interface Span {
  from: number;
  until: number;
}

/** Prior: a visit that runs late runs this late. */
export const LATE_MIN = 10;

const handsOf = (timeline: Timeline) => timeline.tasks.filter((task) => task.end_min > task.start_min);
const meet = (a: Span, b: Span) => a.from < b.until - 1e-6 && b.from < a.until - 1e-6;
const spanOf = (task: TimelineTask, by = 0): Span => ({
  from: task.start_min + by,
  until: task.end_min + by,
});

/** When a lightener of this client is on the hair. */
const watched = ({ timeline, lightens }: OnClock, by = 0): Span[] =>
  timeline.developments
    .filter((d) => lightens.has(d.bowl))
    .map((d) => ({ from: d.first_touch + by, until: d.leaves_at + by }));

/** Whether the second client can begin at minute `start` of the first with nobody kept waiting. */
export function fits(first: OnClock, second: OnClock, start: number): boolean {
  const mine = handsOf(first.timeline);
  const theirs = handsOf(second.timeline);
  return (
    theirs.every((t) => mine.every((m) => !meet(spanOf(m), spanOf(t, start)))) &&
    watched(first).every((w) => theirs.every((t) => !meet(w, spanOf(t, start)))) &&
    watched(second, start).every((w) => mine.every((m) => !meet(w, spanOf(m))))
  );
}

/** The first whole minute from `now` on at which the second fits; when the first is finished it always does. */
export function earliest(first: OnClock, second: OnClock, now: number): number {
  const end = Math.ceil(first.timeline.finish_min);
  for (let start = Math.ceil(now); start < end; start++) if (fits(first, second, start)) return start;
  return Math.max(Math.ceil(now), end);
}

/**
 * The first client's tasks that have not begun by `now` come `late` minutes later and go first; the second waits for
 * the hands. Nothing is shortened.
 */
export function whenLate(
  first: OnClock,
  second: OnClock,
  start: number,
  now: number,
  late = LATE_MIN,
): WhenLate {
  const mine = handsOf(first.timeline).map((task) => spanOf(task, task.start_min >= now ? late : 0));
  const free = (span: Span) => mine.find((m) => meet(m, span));
  let waits = 0;
  const off = new Map<number, number>(); // how late each basin time of the second comes
  for (const task of handsOf(second.timeline).toSorted((a, b) => a.start_min - b.start_min)) {
    for (let busy = free(spanOf(task, start + waits)); busy; busy = free(spanOf(task, start + waits)))
      waits = busy.until - start - task.start_min;
    off.set(task.start_min, waits);
  }
  const lateAt = (minute: number) =>
    [...off].filter(([at]) => at <= minute + 1e-6).reduce((most, [, by]) => Math.max(most, by), 0);
  const over = second.timeline.developments.flatMap((d) => {
    // Both ends move: what is touched later may also stay until later.
    const minutes = d.leaves_at + lateAt(d.leaves_at) - (d.max_until + lateAt(d.first_touch));
    return minutes > 0.5 ? [{ zone: d.zone, bowl: d.bowl, minutes }] : [];
  });
  const theirs = handsOf(second.timeline).map((task) => spanOf(task, start + lateAt(task.start_min)));
  const shared = (a: Span, b: Span) => Math.max(0, Math.min(a.until, b.until) - Math.max(a.from, b.from));
  const unwatched = watched(first, late).reduce(
    (sum, w) => sum + theirs.reduce((all, t) => all + shared(w, t), 0),
    0,
  );
  return { waits, over, unwatched };
}
