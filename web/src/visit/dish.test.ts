import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Running, RunningBowl } from '../api/types';
import { asItIs, dishOf, mixesOf, readGrams, scaled, shareFor, shareOf, tooMuch } from './dish';

const bowl: RunningBowl = {
  label: 'A',
  range: 'r',
  minutes: 35,
  zones: [],
  parts: [
    { product: 'shade', grams: 30 },
    { product: 'developer', grams: 45 },
  ],
  names: ['7 natural', '6 %'],
};
const add = (product: string, grams: number, mix = 1) => ({ bowl: 'A', mix, product, grams, at_min: 1 });
const running = (...additions: ReturnType<typeof add>[]) =>
  ({ since: '', bowls: [bowl], plan: {}, additions }) as unknown as Running;

it('asks for one part after another, in the order of the plan', () => {
  expect(dishOf(running(), bowl, 1).due?.product).toBe('shade');
  expect(dishOf(running(add('shade', 29.8)), bowl, 1).due?.product).toBe('developer');
  const full = dishOf(running(add('shade', 20), add('shade', 10), add('developer', 45)), bowl, 1);
  expect([full.due, full.total]).toEqual([undefined, 75]);
});

it('counts each mix by itself, and less of each for a small one', () => {
  const two = running(add('shade', 30), add('shade', 8, 2));
  expect(mixesOf(two, 'A')).toBe(2);
  const small = dishOf(two, bowl, 2, 0.25);
  expect(small.parts.map((p) => [p.asked, p.grams])).toEqual([
    [7.5, 8],
    [11.3, 0],
  ]);
});

it('tells too much of a part, and what keeps the shares', () => {
  const dish = dishOf(running(add('shade', 36)), bowl, 1);
  expect(tooMuch(dish)).toMatchObject({ over: 6, factor: 1.2 });
  expect(scaled(bowl, 1.2).parts.map((p) => p.grams)).toEqual([36, 54]);
  expect(asItIs(dish).parts.map((p) => p.grams)).toEqual([36, 45]);
  expect(tooMuch(dishOf(running(add('shade', 30.4)), bowl, 1))).toBeUndefined();
});

it('keeps the shares of every bowl it scales', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), (factor) => {
      const [a, b] = scaled(bowl, factor).parts;
      expect(b!.grams / a!.grams).toBeCloseTo(1.5, 1);
    }),
  );
});

it('reads grams as they are typed, and nothing else', () => {
  expect(['12.5', '12,5', ' 30 g ', '0'].map((text) => readGrams(text))).toEqual([12.5, 12.5, 30, 0]);
  expect(['', '-3', '12.555', 'abc', '1e3', '99999'].map((text) => readGrams(text))).toEqual(
    Array(6).fill(undefined),
  );
});

it('takes a figure as the unit of the device, or as the unit that stands beside it', () => {
  expect(readGrams('0.44', 'oz')).toBe(12.5);
  expect(readGrams('1 oz')).toBe(28.3);
  expect(readGrams('12.5 g', 'oz')).toBe(12.5);
});

it('shares a bowl out over the mixes that were planned; what is made besides is small', () => {
  const plan = (mixes: number) =>
    ({
      ...running(),
      plan: { tasks: Array.from({ length: mixes }, (_, i) => ({ kind: 'mix', bowl: 'A', mix: i + 1 })) },
    }) as unknown as Running;
  expect([1, 2].map((mix) => shareOf(plan(2), bowl, mix))).toEqual([0.5, 0.5]);
  expect(shareOf(plan(1), bowl, 1)).toBe(1);
  const again = dishOf(running(), bowl, 2, shareOf(plan(1), bowl, 2));
  expect(again.parts.reduce((sum, part) => sum + part.asked, 0)).toBeCloseTo(20, 1);
  expect(shareFor(bowl, 1000), 'never more than the bowl').toBe(1);
});
