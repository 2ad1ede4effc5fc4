import { describe, expect, it } from 'vitest';
import type { BowlView, PlanAnswer } from '../../api/types';
import { newVisit } from '../../visit/head';
import { ownBowl } from '../../visit/work.svelte';
import { bowlsInHand, weighed } from './own';

const bowl = (label: string, grams: number[]) =>
  ({
    label,
    range: 'r',
    parts: grams.map((g, i) => ({ product: `p${i}`, name: `P ${i}`, grams: g })),
    minutes: 30,
    damp_hair: false,
    zones: ['top/regrowth'],
    step: 1,
  }) as unknown as BowlView;
const plan = { bowls: [bowl('A', [20, 30]), bowl('B', [10])] } as unknown as PlanAnswer;
const visit = newVisit('A. B.', '2026-03-09');
const grams = (bowls: { parts: { grams: number }[] }[]) => bowls.map((b) => b.parts.map((p) => p.grams));

describe('bowls in hand', () => {
  it('are those that were found until one is weighed', () => {
    expect(bowlsInHand(visit, plan)).toEqual(plan.bowls.map(ownBowl));
  });

  it('keep every gram that was changed before the answer came', () => {
    // Two taps on two parts while the plan on the screen is still that of before both.
    const one = { ...visit, bowls: weighed(bowlsInHand(visit, plan), 'A', 0, 25) };
    const two = { ...visit, bowls: weighed(bowlsInHand(one, plan), 'B', 0, 12) };
    expect(grams(bowlsInHand(two, plan))).toEqual([[25, 30], [12]]);
    expect(grams(plan.bowls), 'the plan is left alone').toEqual([[20, 30], [10]]);
  });

  it('of another plan are those of that plan', () => {
    const other = { ...visit, bowls: [ownBowl(bowl('A', [1]))] };
    expect(grams(bowlsInHand(other, plan))).toEqual([[20, 30], [10]]);
    const swapped = plan.bowls.map(ownBowl);
    swapped[1]!.parts[0]!.product = 'p9';
    expect(bowlsInHand({ ...visit, bowls: swapped }, plan)[1]?.parts[0]?.product).toBe('p0');
  });
});
