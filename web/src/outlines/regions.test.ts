import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leftOver, rejoined } from './regions';
import { CUTS, type Slice } from './types';

const half = (cut: Slice['cut'], index: number): Slice => ({ cut, index, of: 2 });
/** Every way to cut a whole into halves of halves: a tree of cuts, none twice on a branch. */
const pieces = fc
  .array(fc.record({ at: fc.nat(7), cut: fc.constantFrom(...CUTS) }), { maxLength: 5 })
  .map((cuts) =>
    cuts.reduce<Slice[][]>(
      (all, { at, cut }) => {
        const i = at % all.length;
        const piece = all[i]!;
        if (piece.some((s) => s.cut === cut)) return all;
        return all.flatMap((p, j) =>
          j === i
            ? [
                [...p, half(cut, 0)],
                [...p, half(cut, 1)],
              ]
            : [p],
        );
      },
      [[]],
    ),
  );
const size = (slices: readonly Slice[]) => 1 / 2 ** slices.length;
const apart = (a: readonly Slice[], b: readonly Slice[]) =>
  a.some((s) => b.some((r) => r.cut === s.cut && r.index !== s.index));

describe('pieces of a part of the head', () => {
  it('and what they leave fill it exactly, without overlap', () => {
    fc.assert(
      fc.property(pieces, fc.nat(31), (all, mask) => {
        const taken = all.filter((_, i) => mask & (1 << i));
        const left = leftOver(taken);
        const together = [...taken, ...left];
        expect(together.reduce((sum, p) => sum + size(p), 0)).toBeCloseTo(1, 9);
        together.forEach((a, i) => together.slice(i + 1).forEach((b) => expect(apart(a, b)).toBe(true)));
      }),
    );
  });

  it('become the whole again when all of them are joined', () => {
    fc.assert(
      fc.property(pieces, (all) => {
        const whole = rejoined(all.map((slices) => ({ base: 'crown' as const, slices })));
        expect(whole).toEqual([{ base: 'crown', slices: [] }]);
      }),
      { numRuns: 1000 },
    );
  });

  it('become the whole again even where no two of them are halves of one cut', () => {
    // Three cuts give eight cells; joined two by two in an unlucky order they lock each other like a pinwheel.
    const [a, b, c] = [CUTS[0]!, CUTS[1]!, CUTS[2]!];
    const locked = [
      [half(a, 0), half(b, 0), half(c, 0)],
      [half(a, 1), half(b, 1), half(c, 1)],
      [half(a, 1), half(b, 0)],
      [half(b, 1), half(c, 0)],
      [half(a, 0), half(c, 1)],
    ].map((slices) => ({ base: 'crown' as const, slices }));
    expect(rejoined(locked)).toEqual([{ base: 'crown', slices: [] }]);
  });

  it('that are no halves of one cut stay apart', () => {
    const two = [
      { base: 'top' as const, slices: [half('left-right', 0)] },
      { base: 'top' as const, slices: [half('front-back', 0)] },
    ];
    expect(rejoined(two)).toEqual(two);
  });
});
