import type { AreaKind, Head } from '../api/types';
import { BASE_AREAS, type BaseArea, type HeadArea, type HairStyle, type Region } from '../outlines/types';
import { areaWords } from './words';
import type { Rgb } from '../strand/types';

/** Which parts of the outlines an area of this kind covers; left first where there are two. */
const parts: Record<AreaKind, readonly BaseArea[]> = {
  front_hairline: ['hairline'],
  temples: ['temple-left', 'temple-right'],
  top: ['top'],
  crown: ['crown'],
  sides: ['side-left', 'side-right'],
  nape: ['nape'],
  other: [],
};

/** Parts that no area of the head covers go to their neighbour, so that the outlines show no hole. */
const neighbour: Partial<Record<BaseArea, AreaKind[]>> = {
  'temple-left': ['sides', 'front_hairline'],
  'temple-right': ['sides', 'front_hairline'],
  hairline: ['top'],
  crown: ['top', 'nape'],
  nape: ['crown', 'sides'],
  top: ['crown'],
  'side-left': ['temples', 'nape'],
  'side-right': ['temples', 'nape'],
};

function regionsOf(kind: AreaKind, index: number, of: number): Region[] {
  const bases = parts[kind];
  if (of === 1) return bases.map((base) => ({ base, slices: [] }));
  // Two areas where the head has two sides: one each.
  if (of === 2 && bases.length === 2) return [{ base: bases[index]!, slices: [] }];
  return bases.map((base) => ({
    base,
    slices: [{ cut: bases.length === 2 ? 'front-back' : 'left-right', index, of }],
  }));
}

/** The head's areas as the outlines draw them, each with its colour where one is known. */
export function outlineAreas(head: Head, colour: (area: string) => Rgb | undefined): HeadArea[] {
  const kindOf = (kind: AreaKind | undefined) => kind ?? 'other';
  const areas = head.areas.map((area) => {
    const same = head.areas.filter((a) => kindOf(a.kind) === kindOf(area.kind));
    const srgb = colour(area.id);
    return {
      id: area.id,
      label: areaWords(area),
      kind: kindOf(area.kind),
      regions: regionsOf(kindOf(area.kind), same.indexOf(area), same.length),
      ...(srgb ? { srgb } : {}),
    };
  });
  const covered = new Set(areas.flatMap((area) => area.regions.map((r) => r.base)));
  for (const base of BASE_AREAS) {
    if (covered.has(base)) continue;
    const heir = neighbour[base]?.map((kind) => areas.find((a) => a.kind === kind)).find(Boolean);
    heir?.regions.push({ base, slices: [] });
  }
  return areas.map(({ kind: _, ...area }) => area);
}

/** The outline's hair: tight curls, short, or long. */
export function outlineStyle(head: Head): HairStyle {
  const texture = head.hair?.texture;
  if (texture === 'coily' || texture === 'curly') return 'curly';
  const longest = Math.max(...head.areas.flatMap((area) => area.spans.map((span) => span.to_cm)), 0);
  return longest < 8 ? 'cropped' : 'long';
}
