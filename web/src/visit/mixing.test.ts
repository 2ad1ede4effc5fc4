import { describe, expect, it } from 'vitest';
import type { ShelfAnswer } from '../api/types';
import { newVisit } from './head';
import { nextBowl, ofRange, whole, withBottle, withGrams, withShade, withZones } from './mixing';

const shelf = {
  ranges: [
    { id: 'tint', cls: 'permanent', ratios: [1.5, 2], minutes: { target: 35 } },
    { id: 'stain', cls: 'direct', ratios: [0], minutes: { target: 25 } },
  ],
  products: [
    { id: 'six', range: 'tint', cls: 'permanent', level: 6 },
    { id: 'seven', range: 'tint', cls: 'permanent', level: 7 },
    { id: 'blue', range: 'stain', cls: 'direct', level: 0 },
    { id: 'dev-6', range: '', cls: 'developer', level: 0, peroxide_percent: 6 },
    { id: 'dev-9', range: '', cls: 'developer', level: 0, peroxide_percent: 9 },
  ],
} as unknown as ShelfAnswer;
const visit = newVisit('A. B.', '2026-03-09');
const empty = nextBowl(visit, shelf, []);
const grams = (bowl: typeof empty) => Object.fromEntries(bowl.parts.map((p) => [p.product, p.grams]));

describe('a bowl of one’s own', () => {
  it('is two shades and a developer in three touches, in the proportion of its range', () => {
    const mixed = withBottle(withShade(withShade(empty, shelf, 'six'), shelf, 'seven'), shelf, 'dev-6');
    expect(grams(mixed)).toEqual({ six: 15, seven: 15, 'dev-6': 45 });
    expect(mixed).toMatchObject({ label: 'A', range: 'tint', minutes: 35 });
    expect(mixed.zones).toHaveLength(10);
  });

  it('keeps what was weighed when a shade is put beside it, and the developer follows', () => {
    const one = withBottle(withShade(withShade(empty, shelf, 'six'), shelf, 'seven'), shelf, 'dev-6');
    const weighed = withGrams(one, 'six', 40);
    expect(grams(weighed)).toEqual({ six: 40, seven: 15, 'dev-6': 45 });
    expect(grams(withShade(weighed, shelf, 'seven'))).toEqual({ six: 40, 'dev-6': 60 });
  });

  it('takes a bottle out again, and none where the range needs none', () => {
    const one = withBottle(withShade(empty, shelf, 'six'), shelf, 'dev-6');
    expect(grams(withBottle(one, shelf, 'dev-9'))).toEqual({ six: 30, 'dev-9': 45 });
    expect(grams(withBottle(one, shelf, 'dev-6'))).toEqual({ six: 30 });
    expect(grams(withBottle(withShade(ofRange(one, 'stain', shelf), shelf, 'blue'), shelf, 'dev-6'))).toEqual(
      {
        blue: 30,
      },
    );
  });

  it('goes where no other bowl is; a zone moves from one to another of the same step', () => {
    const first = { ...empty, zones: ['top/regrowth'] };
    const second = nextBowl(visit, shelf, [first]);
    expect(second.label).toBe('B');
    expect(second.step).toBeUndefined();
    expect(second.zones).not.toContain('top/regrowth');
    const [a, b] = withZones([first, second], 'B', ['top/regrowth'], true);
    expect(a!.zones).toEqual([]);
    expect(b!.zones).toContain('top/regrowth');
  });

  it('goes on after the others where these are everywhere', () => {
    expect(nextBowl(visit, shelf, [empty])).toMatchObject({ label: 'B', step: 2 });
  });

  it('can be judged once something is in it and it goes somewhere', () => {
    expect(whole([empty])).toEqual([]);
    const one = withShade(empty, shelf, 'six');
    expect(whole([one])).toHaveLength(1);
    expect(whole([withGrams(one, 'six', 0)])).toEqual([]);
    expect(whole([{ ...one, zones: [] }])).toEqual([]);
  });
});
