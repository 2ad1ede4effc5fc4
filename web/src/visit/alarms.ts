import type { Running, Timeline } from '../api/types';
import { toAsk, type Asked } from './comfort';
import { lifeOf } from './running';

/** What calls for somebody, at a minute of the visit. */
export interface Alarm {
  id: string;
  at: number;
  kind: 'task' | 'check' | 'basin' | 'soon_over' | 'over' | 'mix_old' | 'mix_stale' | 'comfort';
  bowl: string;
  zone: string;
  task?: string;
}

/** Nobody needs to be told any more: what was due is long begun, on the clock that runs by itself. */
export const isPast = (alarm: Alarm, minute: number): boolean =>
  (alarm.kind === 'task' || alarm.kind === 'check' || alarm.kind === 'comfort') && minute - alarm.at > 2;

/** Before the longest time is over, minutes (prior): enough to walk to the basin. */
const WARNED = 3;

/** Every alarm of this clock, by time. */
export function alarmsOf(running: Running, timeline: Timeline, asked: readonly Asked[] = []): Alarm[] {
  const out: Alarm[] = toAsk(timeline, asked).map((at) => ({
    ...{ id: `comfort@${at.toFixed(1)}`, at, kind: 'comfort' },
    ...{ bowl: '', zone: '' },
  }));
  for (const t of timeline.tasks) {
    if (t.kind === 'prepare') continue;
    const basin = t.start_min === timeline.steps.find((s) => s.basin_min === t.start_min)?.basin_min;
    const kind = t.kind === 'check' ? 'check' : basin ? 'basin' : 'task';
    out.push({ id: `${t.id}@${t.kind}`, at: t.start_min, kind, bowl: t.bowl, zone: t.zone, task: t.kind });
  }
  for (const d of timeline.developments) {
    const of = { bowl: d.bowl, zone: d.zone };
    if (d.leaves_at > d.max_until - WARNED)
      out.push({ id: `${d.application}@soon`, at: d.max_until - WARNED, kind: 'soon_over', ...of });
    if (d.leaves_at > d.max_until)
      out.push({ id: `${d.application}@over`, at: d.max_until, kind: 'over', ...of });
  }
  // A mix is told of when half of its life is over, and when all of it is.
  const empty = new Set(running.marks?.filter((m) => m.what === 'ran_out').map((m) => m.task));
  for (const mix of timeline.tasks) {
    if (mix.kind !== 'mix' || empty.has(mix.id)) continue;
    const uses = timeline.tasks.filter((t) => t.kind === 'apply' && t.bowl === mix.bowl && t.mix === mix.mix);
    const needed = Math.max(0, ...uses.map((t) => t.end_min));
    const old = mix.start_min + lifeOf(running, mix.bowl) / 2;
    const stale = mix.start_min + lifeOf(running, mix.bowl);
    if (needed > old) out.push({ id: `${mix.id}@old`, at: old, kind: 'mix_old', bowl: mix.bowl, zone: '' });
    if (needed > stale)
      out.push({ id: `${mix.id}@stale`, at: stale, kind: 'mix_stale', bowl: mix.bowl, zone: '' });
  }
  return out.sort((a, b) => a.at - b.at);
}
