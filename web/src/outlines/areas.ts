import { BASE_AREAS, CUTS, type BaseArea, type Cut, type HeadArea, type Region } from './types';

/** The eight areas of an unparted head; `label` names each. */
export const wholeHead = (label: (base: BaseArea) => string): HeadArea[] =>
  BASE_AREAS.map((base) => ({ id: base, label: label(base), regions: [{ base, slices: [] }] }));

/** Parting the middle of a head that has a left and a right of its own would leave nothing on one side. */
const ONE_SIDED: ReadonlySet<BaseArea> = new Set(['temple-left', 'temple-right', 'side-left', 'side-right']);

/** The partings that make sense for an area: one not yet made, and none left–right on one side of the head. */
export function possibleCuts(area: HeadArea): Cut[] {
  if (area.regions.length !== 1) return [];
  const { base, slices } = area.regions[0] as Region;
  if (slices.length >= 2) return [];
  return CUTS.filter(
    (cut) => !slices.some((s) => s.cut === cut) && !(cut === 'left-right' && ONE_SIDED.has(base)),
  );
}

/** Replaces one area by its two parts; the same list when there is nothing to split. */
export function splitArea(
  areas: readonly HeadArea[],
  id: string,
  cut: Cut,
  label: (area: HeadArea, cut: Cut, index: number) => string,
): HeadArea[] {
  return areas.flatMap((area) => {
    if (area.id !== id || !possibleCuts(area).includes(cut)) return [area];
    const region = area.regions[0] as Region;
    return [0, 1].map((index) => ({
      ...area,
      id: `${area.id}/${cut}-${index}`,
      label: label(area, cut, index),
      regions: [{ base: region.base, slices: [...region.slices, { cut, index, of: 2 }] }],
    }));
  });
}

const sameSlices = (a: Region, b: Region, depth: number): boolean =>
  a.base === b.base &&
  a.slices.length === b.slices.length &&
  a.slices.slice(0, depth).every((s, i) => s.cut === b.slices[i]?.cut && s.index === b.slices[i]?.index);

/** Two halves of one parting become the whole again. */
function joined(regions: readonly Region[]): Region[] {
  for (const a of regions) {
    const last = a.slices.length - 1;
    const other = regions.find(
      (b) => b !== a && last >= 0 && sameSlices(a, b, last) && a.slices[last]?.cut === b.slices[last]?.cut,
    );
    if (other) {
      const rest = regions.filter((r) => r !== a && r !== other);
      return joined([...rest, { base: a.base, slices: a.slices.slice(0, last) }]);
    }
  }
  return [...regions];
}

/** Makes one area of several, in the place of the first; the same list when fewer than two of them exist. */
export function mergeAreas(areas: readonly HeadArea[], ids: readonly string[], label: string): HeadArea[] {
  const chosen = areas.filter((a) => ids.includes(a.id));
  const first = chosen[0];
  if (!first || chosen.length < 2) return [...areas];
  const merged: HeadArea = {
    ...first,
    id: chosen.map((a) => a.id).join('+'),
    label,
    regions: joined(chosen.flatMap((a) => a.regions)),
  };
  return areas.flatMap((a) => (a.id === first.id ? [merged] : ids.includes(a.id) ? [] : [a]));
}
