import { describe, expect, it } from 'vitest';
import type { Body } from '../api/facts';
import type { PlanAnswer, Running, ShelfAnswer, Visit } from '../api/types';
import { appliedOf, bowlsOf, factsFor, foreseen, headAfter, mixedOf } from './ended';
import { returning } from './carry';
import { withReading } from './head';
import { readSpan } from './reading';

const bowl = {
  label: 'A',
  range: 'r',
  minutes: 30,
  zones: ['top/all'],
  parts: [
    { product: 'tint', grams: 30 },
    { product: 'dev', grams: 45 },
  ],
};
const head: Visit['head'] = {
  areas: [{ id: 'top', spans: [{ id: 'all', to_cm: 12, level: 5, tone: 'natural', white_percent: 30 }] }],
};
const running = (additions: Running['additions']): Running =>
  ({
    since: '2026-03-10T09:00:00Z',
    bowls: [{ ...bowl, names: ['7 gold', '6 %'] }],
    plan: {},
    additions,
  }) as Running;
const visit = (additions: Running['additions'] = []): Visit =>
  ({ schema: 'strandline.visit/1', head, running: running(additions) }) as Visit;

describe('what was really mixed', () => {
  it('is what was asked for where nothing was weighed', () => {
    expect(mixedOf(visit(), undefined)).toMatchObject([{ label: 'A', mix: 1, parts: bowl.parts }]);
  });

  it('is what the scale said, mix by mix, and all mixes together for a prediction', () => {
    const weighed = [
      { bowl: 'A', mix: 1, product: 'tint', grams: 20.2, at_min: 3 },
      { bowl: 'A', mix: 1, product: 'dev', grams: 30, at_min: 4 },
      { bowl: 'A', mix: 2, product: 'tint', grams: 11, at_min: 40 },
      { bowl: 'A', mix: 2, product: 'dev', grams: 15.5, at_min: 41 },
    ];
    const mixed = mixedOf(visit(weighed), undefined);
    expect(mixed.map(({ mix, at_min }) => [mix, at_min])).toEqual([
      [1, 3],
      [2, 40],
    ]);
    expect(bowlsOf(mixed)[0]?.parts.map((part) => part.grams)).toEqual([31.2, 45.5]);
    expect(appliedOf(mixed, undefined)).toEqual([{ zone: 'top/all', bowl: 'A' }]);
  });

  it('is nothing where nothing went in', () => {
    const none = [{ bowl: 'A', mix: 1, product: 'other', grams: 0, at_min: 1 }];
    expect(bowlsOf(mixedOf(visit(none), undefined))).toEqual([]);
  });
});

describe('the head as it leaves', () => {
  const plan = {
    bowls: [bowl],
    zones: [
      {
        zone: 'top/all',
        bowl: 'A',
        planned: { level: 6.9, tone: 'gold', contrast_levels: 0.1, porosity: 1 },
      },
    ],
  } as unknown as PlanAnswer;
  const shelf = { products: [{ id: 'tint', cls: 'permanent' }], ranges: [] } as unknown as ShelfAnswer;

  it('begins the next reading at what was measured, until an eye reads it anew', () => {
    const lab = { l: 41.2, a: 9.5, b: 18.3 };
    const reached = [{ zone: 'top/all', level: 6, tone: 'copper' as const, measured: lab }];
    const left = headAfter(head, plan, shelf, reached);
    const span = left.areas[0]!.spans[0]!;
    expect(span.populations?.[0]).toMatchObject({ kind: 'pigmented', share: 1, level: 6, measured: lab });
    const next = returning(head, left, 2);
    expect(next.areas[0]!.spans.map((one) => readSpan(one).measured)).toEqual([undefined, lab]);
    const other = withReading(next, 'top', next.areas[0]!.spans[1]!.id, { white: 0, level: 7 });
    expect(readSpan(other.areas[0]!.spans[1]!)).toMatchObject({ level: 7, tone: 'copper' });
    expect(readSpan(other.areas[0]!.spans[1]!).measured).toBeUndefined();
    // Among white it would be neither's own colour.
    const mixed = {
      ...plan,
      zones: [{ ...plan.zones[0]!, planned: { ...plan.zones[0]!.planned, contrast_levels: 2 } }],
    };
    expect(readSpan(headAfter(head, mixed, shelf, reached).areas[0]!.spans[0]!)).toMatchObject({
      white: 30,
      level: 6,
    });
    expect(readSpan(headAfter(head, mixed, shelf, reached).areas[0]!.spans[0]!).measured).toBeUndefined();
  });

  it('has the levels that were seen in place of those foreseen', () => {
    const seen = headAfter(head, plan, shelf, [{ zone: 'top/all', level: 6, tone: 'copper' }]);
    expect(readSpan(seen.areas[0]!.spans[0]!)).toMatchObject({
      level: 6,
      tone: 'copper',
      white: 0,
      origin: 'tinted',
    });
    expect(readSpan(seen.areas[0]!.spans[0]!).measured).toBeUndefined();
    const untouched = headAfter(head, plan, shelf, []);
    expect(readSpan(untouched.areas[0]!.spans[0]!)).toMatchObject({ level: 7, tone: 'gold' });
  });

  it('is told as it was predicted, not as its half level, and read again by half levels', () => {
    const [told] = foreseen(plan);
    expect(told).toEqual({ zone: 'top/all', level: 6.9, tone: 'gold' });
    expect(readSpan(headAfter(head, plan, shelf, [told!]).areas[0]!.spans[0]!).level).toBe(7);
  });

  it('goes in with everything that was done, each fact under an id of its own', () => {
    const mixed = mixedOf(visit(), undefined);
    const result: Body<'result'> = { zones: [] };
    const facts = factsFor(mixed, appliedOf(mixed, undefined), result);
    expect(facts.map((fact) => fact.kind)).toEqual(['mixed', 'applied', 'result']);
    expect(new Set(facts.map((fact) => fact.id)).size).toBe(3);
  });
});
