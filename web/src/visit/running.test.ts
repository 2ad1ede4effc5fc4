import { describe, expect, it } from 'vitest';
import type { Running, Timeline, TimelineTask } from '../api/types';
import { alarmsOf } from './alarms';
import { atHand, countdown, instantOf, minuteAt, minuteOfDay, mixesAt, shifted, standOf } from './running';

const task = (
  id: string,
  kind: TimelineTask['kind'],
  start: number,
  end: number,
  more = {},
): TimelineTask => ({
  id,
  kind,
  who: 'colourist',
  bowl: '',
  mix: 0,
  application: '',
  zone: '',
  start_min: start,
  end_min: end,
  earliest: start,
  latest: start,
  reason: '',
  during: '',
  needs_min: 0,
  ...more,
});
const on = (zone: string, first: number, last: number) => ({
  application: zone,
  zone,
  bowl: 'A',
  first_touch: first,
  last_touch: last,
  min_until: last + 30,
  target_at: last + 35,
  max_until: first + 60,
  leaves_at: 61,
});
const of = (zone: string) => ({ bowl: 'A', mix: 1, application: zone, zone });
const plan = {
  tasks: [
    task('prepare', 'prepare', 0, 5),
    task('mix:A:1', 'mix', 5, 9, { bowl: 'A', mix: 1 }),
    task('apply:crown/regrowth', 'apply', 9, 18, of('crown/regrowth')),
    task('apply:nape/regrowth', 'apply', 18, 26, of('nape/regrowth')),
    task('rinse:1', 'rinse', 61, 66),
    task('dry:2', 'dry', 66, 86),
  ],
  developments: [on('crown/regrowth', 9, 18), on('nape/regrowth', 18, 26)],
  order: [],
  steps: [{ step: 1, from_min: 0, basin_min: 61, until_min: 86 }],
  basin_min: 61,
  finish_min: 86,
} as unknown as Timeline;
const running = {
  since: '2026-03-09T10:00:00.000Z',
  bowls: [{ label: 'A', mix_life_min: 40 }],
  plan,
  marks: [],
} as unknown as Running;
const start = (timeline: Timeline, id: string) => timeline.tasks.find((t) => t.id === id)!.start_min;

describe('the plan moved by marks', () => {
  it('stays as it is without any, and is never changed itself', () => {
    expect(shifted(plan, [])).toEqual(plan);
    shifted(plan, [{ task: 'mix:A:1', what: 'done', at_min: 20 }]);
    expect(start(plan, 'apply:crown/regrowth')).toBe(9);
  });

  it('moves what comes after by addition, both clocks and the basin with it', () => {
    const late = shifted(plan, [{ task: 'apply:crown/regrowth', what: 'done', at_min: 22 }]);
    expect(start(late, 'apply:nape/regrowth')).toBe(22);
    const [crown, nape] = late.developments;
    expect([crown!.first_touch, crown!.last_touch, crown!.min_until, crown!.max_until]).toEqual([
      9, 22, 52, 69,
    ]);
    expect([nape!.first_touch, nape!.target_at, nape!.max_until]).toEqual([22, 65, 82]);
    expect([late.basin_min, late.finish_min, start(late, 'rinse:1')]).toEqual([65, 90, 65]);
    expect(crown!.leaves_at).toBe(65);
  });

  it('takes marks in the order of their times, however they were made', () => {
    const marks = [
      { task: 'apply:crown/regrowth', what: 'done', at_min: 20 },
      { task: 'mix:A:1', what: 'done', at_min: 10 },
    ] as const;
    expect(shifted(plan, marks)).toEqual(shifted(plan, marks.toReversed()));
  });

  it('leaves out what is not wanted', () => {
    const less = shifted(plan, [{ task: 'apply:nape/regrowth', what: 'left_out', at_min: 12 }]);
    expect(less.tasks.some((t) => t.zone === 'nape/regrowth')).toBe(false);
    expect(less.developments).toHaveLength(1);
  });
});

it('counts minutes from the instant the visit began, on every device', () => {
  expect(minuteAt(running, Date.parse('2026-03-09T10:12:30.000Z'))).toBe(12.5);
  expect(instantOf(running, 12.5).toISOString()).toBe('2026-03-09T10:12:30.000Z');
});

it('says what hands do and what comes next', () => {
  expect(atHand(plan, 10).now?.id).toBe('apply:crown/regrowth');
  expect(atHand(plan, 10).next?.id).toBe('apply:nape/regrowth');
  expect(atHand(plan, 40)).toMatchObject({ now: undefined, next: { id: 'rinse:1' } });
  expect(atHand(plan, 90)).toMatchObject({ now: undefined, next: undefined });
});

it('tells shortest from last touch and longest from first', () => {
  const crown = plan.developments[0]!;
  const stands = [5, 10, 20, 50, 62].map((minute) => standOf(crown, minute));
  expect(stands).toEqual(['ahead', 'applying', 'working', 'ready', 'off']);
  const late = { ...crown, leaves_at: 75 };
  expect(standOf(late, 70)).toBe('over');
  expect(standOf(late, 76)).toBe('off');
});

it('writes minutes as a clock does', () => {
  expect([0, 0.5, 9.75, 61, -2.25].map(countdown)).toEqual(['0:00', '0:30', '9:45', '1:01:00', '+2:15']);
});

describe('alarms', () => {
  it('call for tasks at their time and for a mix before it is too old', () => {
    const ids = alarmsOf(running, plan).map((a) => [a.id, a.at]);
    expect(ids).toContainEqual(['apply:crown/regrowth@apply', 9]);
    expect(ids).toContainEqual(['rinse:1@rinse', 61]);
    expect(ids).toContainEqual(['mix:A:1@old', 25]);
    expect(ids).not.toContainEqual(['mix:A:1@stale', 45]);
  });

  it('call before the longest time is over, and when it is', () => {
    const late = structuredClone(plan);
    late.developments[0]!.leaves_at = 75;
    const at = Object.fromEntries(alarmsOf(running, late).map((a) => [a.id, a.at]));
    expect(at['crown/regrowth@soon']).toBe(66);
    expect(at['crown/regrowth@over']).toBe(69);
  });

  it('a mix is in hand until its last use, and not once it ran out', () => {
    expect(mixesAt(running, plan, 20)).toMatchObject([{ bowl: 'A', age: 15, life: 40 }]);
    expect(mixesAt(running, plan, 27)).toEqual([]);
    const empty = { ...running, marks: [{ task: 'mix:A:1', what: 'ran_out', at_min: 15 }] } as Running;
    expect(mixesAt(empty, plan, 20)).toEqual([]);
  });
});

it('takes a time on the wall as the next one that comes', () => {
  const since = new Date(2026, 2, 9, 10, 40);
  const from = { ...running, since: since.toISOString() };
  expect(minuteOfDay(from, 11, 30)).toBe(50);
  expect(minuteOfDay({ ...from, since: new Date(2026, 2, 9, 23, 30).toISOString() }, 0, 15)).toBe(45);
});
