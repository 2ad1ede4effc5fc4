import { describe, expect, it } from 'vitest';
import type { PlanAnswer } from '../../api/types';
import { headOf, lengths, minutesOf, was, wishes } from './enquiry';

describe('an enquiry', () => {
  it('is a head with one wish', () => {
    const visit = headOf({ long: 'shoulder', was: 'tinted', wish: 'lighter' }, '2026-03-10', 2, 'demo');
    expect(visit.aims).toEqual([{ zone: '*', level: 8, tone: 'natural' }]);
    expect(visit.skin_test).toBe('2026-03-07');
    expect(visit.head.areas[0]?.spans[1]).toMatchObject({ to_cm: 28, level: 6, origin: 'tinted' });
  });
  it('stays within the levels and the hair whatever is said', () => {
    for (const long of lengths)
      for (const on of was)
        for (const wish of wishes) {
          const { aims, head } = headOf({ long, was: on, wish }, '2026-03-10', 2, 'demo');
          expect(aims?.[0]?.level).toBeGreaterThanOrEqual(1);
          expect(aims?.[0]?.level).toBeLessThanOrEqual(10);
          for (const { spans } of head.areas)
            for (const span of spans) expect(span.to_cm).toBeGreaterThan(span.from_cm ?? 0);
        }
  });
  it('takes the time of most days, in fives', () => {
    const plan = (finish_min: number, finish_mean: number) =>
      minutesOf({ timeline: { finish_min, finish_mean } } as PlanAnswer);
    expect(plan(100, 118)).toBe(120);
    expect(plan(101, 0)).toBe(105);
  });
});
