import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Timeline, TimelineTask } from '../api/types';
import { earliest, fits, whenLate, type OnClock } from './beside';

/** Mixes, lays on, leaves on, rinses. */
function client(apply: number, develop: number, lighten = false, longest = develop + 10): OnClock {
  const task = (kind: string, start_min: number, end_min: number) =>
    ({ id: kind, kind, who: 'colourist', start_min, end_min, bowl: 'A' }) as TimelineTask;
  const leaves_at = 5 + apply + develop;
  const timeline = {
    tasks: [task('mix', 0, 5), task('apply', 5, 5 + apply), task('rinse', leaves_at, leaves_at + 10)],
    developments: [
      {
        zone: 'top/regrowth',
        bowl: 'A',
        first_touch: 5,
        last_touch: 5 + apply,
        leaves_at,
        max_until: leaves_at + longest - develop,
      },
    ],
    finish_min: leaves_at + 10,
  } as unknown as Timeline;
  return { timeline, lightens: new Set(lighten ? ['A'] : []) };
}

it('puts a second client into the time in which the first develops', () => {
  const [first, second] = [client(15, 40), client(10, 50)];
  const start = earliest(first, second, 20);
  expect(start).toBe(20);
  expect(fits(first, second, 10), 'hands are on the first').toBe(false);
});

it('never turns to another client over a lightener', () => {
  const first = client(15, 40, true);
  expect(earliest(first, client(10, 50), 20), 'when it is off and rinsed').toBe(70);
  expect(earliest(client(15, 40), client(10, 50, true), 20), 'nor from the lightener of the second').toBe(70);
});

it('tells what waits when the first runs ten minutes late', () => {
  const first = client(15, 40); // rinsed 60 … 70
  const second = client(10, 25, false, 28); // rinsed 40 minutes after its start, for ten
  const start = earliest(first, second, 20);
  expect(start, 'rinsed as soon as the first is').toBe(30);
  const late = whenLate(first, second, start, start);
  expect(late).toEqual({ waits: 10, over: [{ zone: 'top/regrowth', bowl: 'A', minutes: 7 }], unwatched: 0 });
  const early = whenLate(first, second, start, start, 0);
  expect(early).toEqual({ waits: 0, over: [], unwatched: 0 });
});

it('says by how much the longest time would be passed', () => {
  const first = client(15, 40); // hands: 0 … 20 and 60 … 70, late: 70 … 80
  const second = client(10, 20, false, 22); // from 36: laid on until 51, rinsed at 71
  expect(fits(first, second, 36)).toBe(true);
  const { waits, over } = whenLate(first, second, 36, 36);
  expect(waits).toBe(9);
  expect(over).toEqual([{ zone: 'top/regrowth', bowl: 'A', minutes: 7 }]);
});

it('whatever the two are: hands do one thing, and what fits without delay makes nobody wait', () => {
  const any = fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), fc.boolean());
  fc.assert(
    fc.property(any, any, fc.integer({ min: 0, max: 90 }), (a, b, now) => {
      const [first, second] = [client(...a), client(...b)];
      const start = earliest(first, second, now);
      expect(start).toBeGreaterThanOrEqual(now);
      const free = start >= first.timeline.finish_min || fits(first, second, start);
      expect(free).toBe(true);
      for (const m of first.timeline.tasks)
        for (const t of second.timeline.tasks)
          expect(t.start_min + start >= m.end_min || t.end_min + start <= m.start_min).toBe(true);
      expect(whenLate(first, second, start, now, 0).waits).toBe(0);
    }),
  );
});
