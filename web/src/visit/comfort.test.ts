import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Timeline } from '../api/types';
import { EVERY_MIN, feelings, lastOf, stretches, toAsk, UNEASY_MIN, type Asked } from './comfort';

const on = (...times: [number, number][]) =>
  ({
    developments: times.map(([first_touch, leaves_at]) => ({ first_touch, leaves_at })),
  }) as unknown as Timeline;

it('asks while anything is on, and between two steps of a visit does not', () => {
  expect(stretches(on([5, 40], [12, 45], [80, 100]))).toEqual([
    { from: 5, until: 45 },
    { from: 80, until: 100 },
  ]);
  expect(toAsk(on([5, 40], [12, 45], [80, 100]), [])).toEqual([15, 25, 35, 90]);
});

it('asks some minutes after the last answer, sooner where it did not feel well', () => {
  const clock = on([0, 40]);
  expect(toAsk(clock, [{ at: 12, feels: 'well' }])).toEqual([22, 32]);
  expect(toAsk(clock, [{ at: 12, feels: 'itches' }])[0]).toBe(17);
});

it('takes the answer told later for the newest where two fall in one moment', () => {
  const stretch = { from: 0, until: 40 };
  const twice: Asked[] = [
    { at: 12, feels: 'itches' },
    { at: 12, feels: 'stings' },
  ];
  expect(lastOf(twice, stretch)?.feels).toBe('stings');
  expect(lastOf([{ at: 14, feels: 'well' }, ...twice], stretch)?.feels).toBe('well');
  expect(lastOf([{ at: 50, feels: 'well' }], stretch)).toBeUndefined();
});

it('never leaves anybody unasked for longer than that', () => {
  const answers = fc.array(
    fc.record({ at: fc.double({ min: 0, max: 90, noNaN: true }), feels: fc.constantFrom(...feelings) }),
    { maxLength: 6 },
  );
  fc.assert(
    fc.property(answers, fc.integer({ min: 1, max: 90 }), (asked: Asked[], until) => {
      const within = asked.filter((one) => one.at <= until);
      const last = Math.max(0, ...within.map((one) => one.at));
      const times = [last, ...toAsk(on([0, until]), asked), until];
      for (let i = 1; i < times.length; i++)
        expect(times[i]! - times[i - 1]!).toBeLessThanOrEqual(EVERY_MIN + 1e-9);
      expect(UNEASY_MIN).toBeLessThan(EVERY_MIN);
    }),
  );
});
