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

/** Pieces that fill the whole, or a larger piece, become that; the largest first. */
export function rejoined(regions: readonly Region[]): Region[] {
  const larger = regions.flatMap(({ base, slices }) =>
    someOf(slices).map((kept) => ({ base, slices: kept })),
  );
  larger.sort((a, b) => a.slices.length - b.slices.length);
  for (const { base, slices } of larger) {
    const inside = regions.filter(
      (r) => r.base === base && slices.every((s) => r.slices.some((t) => same(s, t))),
    );
    if (inside.length < 2) continue;
    const within = inside.map((r) => r.slices.filter((t) => !slices.some((s) => same(s, t))));
    if (leftOver(within).length > 0) continue;
    return rejoined(
      regions.flatMap((r) => (r === inside[0] ? [{ base, slices }] : inside.includes(r) ? [] : [r])),
    );
  }
  return [...regions];
}

/** Every choice of some, none or all of them. */
const someOf = (slices: readonly Slice[]): Slice[][] =>
  slices.reduce<Slice[][]>((all, s) => [...all, ...all.map((chosen) => [...chosen, s])], [[]]);
