import type { Mark, PlanAnswer, Running, ShelfAnswer, Timeline, TimelineTask } from '../api/types';
import { ownBowl } from './work.svelte';

/** Minutes between two instants. */
const MS = 60_000;

/** The visit begins: what was planned is kept as it was agreed, so that it can be followed with nobody to ask. */
export function begin(plan: PlanAnswer, shelf: ShelfAnswer | undefined, now: Date): Running {
  return {
    since: now.toISOString(),
    bowls: plan.bowls.map((bowl) => ({
      ...ownBowl(bowl),
      range_name: bowl.range_name,
      names: bowl.parts.map((part) => part.name),
      mix_life_min: shelf?.ranges.find((range) => range.id === bowl.range)?.mix_life_min ?? 60,
    })),
    plan: plan.timeline,
    marks: [],
    additions: [],
    leftovers: [],
  };
}

export const minuteAt = (running: Running, now: number): number => (now - Date.parse(running.since)) / MS;
export const instantOf = (running: Running, minute: number): Date =>
  new Date(Date.parse(running.since) + minute * MS);

/** The next time that a clock on the wall shows so, whole minutes of the visit. */
export function minuteOfDay(running: Running, hours: number, minutes: number): number {
  const day = new Date(running.since);
  day.setHours(hours, minutes, 0, 0);
  const after = Math.round((day.getTime() - Date.parse(running.since)) / MS);
  return after < 0 ? after + 1440 : after;
}

const isTail = (task: TimelineTask) =>
  !['prepare', 'mix', 'apply', 'check', 'remove_packet'].includes(task.kind);

/** Tasks of these hands behind `moved` begin when they are free. */
function push(tasks: TimelineTask[], moved: TimelineTask): void {
  let free = moved.end_min;
  const behind = tasks
    .filter((t) => t !== moved && t.who === moved.who && !t.during && t.start_min >= moved.start_min)
    .sort((a, b) => a.start_min - b.start_min);
  for (const task of behind) {
    const by = free - task.start_min;
    if (by <= 0) return;
    task.start_min += by;
    task.end_min += by;
    free = task.end_min;
  }
}

/** Both clocks of an application that was touched at other times: the same minutes later or earlier. */
function retime(timeline: Timeline, task: TimelineTask): void {
  const own = timeline.developments.find((d) => d.application === task.application && d.bowl === task.bowl);
  if (!own) return;
  const later = { first: task.start_min - own.first_touch, last: task.end_min - own.last_touch };
  own.first_touch += later.first;
  own.max_until += later.first;
  own.last_touch += later.last;
  own.min_until += later.last;
  own.target_at += later.last;
  const wait = Math.min(own.target_at, own.max_until) - own.leaves_at;
  if (wait <= 0) return;
  // All that stays until the basin waits for it.
  const step = timeline.steps.find(
    (s) => own.leaves_at <= s.basin_min + 0.01 && own.first_touch < s.until_min,
  );
  if (!step) return;
  const from = step.basin_min;
  for (const d of timeline.developments) if (d.leaves_at >= from - 0.01) d.leaves_at += wait;
  for (const t of timeline.tasks)
    if (t.start_min >= from - 0.01 && (isTail(t) || t.start_min >= step.until_min)) {
      t.start_min += wait;
      t.end_min += wait;
    }
  for (const s of timeline.steps) {
    if (s.from_min >= step.until_min) s.from_min += wait;
    if (s.basin_min >= from) s.basin_min += wait;
    if (s.until_min >= from) s.until_min += wait;
  }
  timeline.basin_min += wait;
  timeline.finish_min += wait;
}

/**
 * The plan with the times that marks gave: nothing but addition. A new order, or whether what comes next still fits, is the
 * server's to say; this holds until it answers.
 */
export function shifted(plan: Timeline, marks: readonly Mark[]): Timeline {
  const out = structuredClone(plan);
  for (const mark of marks.toSorted((a, b) => a.at_min - b.at_min)) {
    const task = out.tasks.find((t) => t.id === mark.task);
    if (!task || mark.what === 'ran_out') continue;
    if (mark.what === 'left_out') {
      out.tasks = out.tasks.filter(
        (t) => t !== task && !(t.kind === 'remove_packet' && t.zone === task.zone),
      );
      out.developments = out.developments.filter((d) => d.application !== task.application);
      continue;
    }
    const takes = task.end_min - task.start_min;
    if (mark.what === 'started') {
      task.start_min = mark.at_min;
      task.end_min = mark.at_min + takes;
    } else {
      if (task.start_min >= mark.at_min) task.start_min = Math.max(0, mark.at_min - takes);
      task.end_min = mark.at_min;
    }
    push(out.tasks, task);
    for (const t of out.tasks) if (t.kind === 'apply') retime(out, t);
  }
  out.tasks.sort((a, b) => a.start_min - b.start_min);
  return out;
}

/** What hands do now, and what comes next for them; a look beside other work does not end that work. */
export function atHand(timeline: Timeline, minute: number, who?: string) {
  const mine = timeline.tasks.filter((t) => !who || t.who === who);
  const now = mine.filter((t) => t.start_min <= minute && minute < t.end_min);
  return {
    now: now.find((t) => !t.during) ?? now[0],
    look: now.find((t) => t.during),
    next: mine.find((t) => t.start_min > minute),
  };
}

/** How an application stands: not yet on, under the hands, working, ready to come off, over its longest time, off. */
export type Stand = 'ahead' | 'applying' | 'working' | 'ready' | 'over' | 'off';

export function standOf(d: Timeline['developments'][number], minute: number): Stand {
  if (minute < d.first_touch) return 'ahead';
  if (minute >= d.leaves_at && d.leaves_at <= d.max_until + 0.01) return 'off';
  if (minute < d.last_touch) return 'applying';
  if (minute >= d.max_until) return minute >= d.leaves_at ? 'off' : 'over';
  return minute < d.min_until ? 'working' : 'ready';
}

/** "7:05" until (or, below zero, since) something. */
export function countdown(minutes: number): string {
  const seconds = Math.round(Math.abs(minutes) * 60);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (n: number) => String(n).padStart(2, '0');
  return (minutes < 0 ? '+' : '') + (h ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`);
}

/** How long a mix of this bowl may be used, minutes from the start of mixing: the range's own. */
export const lifeOf = (running: Running, bowl: string): number =>
  running.bowls.find((b) => b.label === bowl)?.mix_life_min ?? 60;

/** Bowls that lie on hair or in a dish now, with the age of each mix in minutes. */
export function mixesAt(running: Running, timeline: Timeline, minute: number) {
  const empty = new Set(running.marks?.filter((m) => m.what === 'ran_out').map((m) => m.task));
  return timeline.tasks
    .filter((t) => t.kind === 'mix' && t.start_min <= minute && !empty.has(t.id))
    .filter((t) =>
      timeline.tasks.some(
        (a) => a.kind === 'apply' && a.bowl === t.bowl && a.mix === t.mix && a.end_min > minute,
      ),
    )
    .map((t) => {
      const life = lifeOf(running, t.bowl);
      return { task: t, bowl: t.bowl, mix: t.mix, age: minute - t.start_min, life };
    });
}
