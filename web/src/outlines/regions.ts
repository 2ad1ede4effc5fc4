import type { Region, Slice } from './types';

/** True when the two slices cut the same way and keep the same part. */
const same = (a: Slice, b: Slice) => a.cut === b.cut && a.index === b.index;

/** What is left of a whole part of the head once these pieces of it (each in halves) are taken; empty when nothing is. */
export function leftOver(taken: readonly (readonly Slice[])[]): Slice[][] {
  if (taken.length === 0) return [[]];
  if (taken.some((slices) => slices.length === 0)) return [];
  const { cut } = taken[0]![0]!;
  return [0, 1].flatMap((index) => {
    const here: Slice = { cut, index, of: 2 };
    const inside = taken
      .filter((slices) => !slices.some((s) => s.cut === cut && s.index !== index))
      .map((slices) => slices.filter((s) => !same(s, here)));
    return leftOver(inside).map((rest) => [here, ...rest]);
  });
}

/** Two halves of one cut become the whole again, as long as any do. */
export function rejoined(regions: readonly Region[]): Region[] {
  for (const a of regions) {
    for (const mine of a.slices) {
      const rest = a.slices.filter((s) => s !== mine);
      const other = regions.find(
        (b) =>
          b !== a &&
          b.base === a.base &&
          b.slices.length === a.slices.length &&
          b.slices.some((s) => s.cut === mine.cut && s.index !== mine.index) &&
          rest.every((r) => b.slices.some((s) => same(s, r))),
      );
      if (!other) continue;
      return rejoined(
        regions.flatMap((r) => (r === a ? [{ base: a.base, slices: rest }] : r === other ? [] : [r])),
      );
    }
  }
  return [...regions];
}
