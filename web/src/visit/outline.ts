import type { AreaKind, Head } from '../api/types';
import { leftOver } from '../outlines/regions';
import {
  BASE_AREAS,
  type BaseArea,
  type HairStyle,
  type HeadArea,
  type Region,
  type Slice,
} from '../outlines/types';
import type { Rgb } from '../strand/types';
import { placesIn, regionsIn } from './places';
import { areaWords, wovenWords } from './words';

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

/** Parts that no area of the head covers go to their neighbour (these first), so that the outlines show no hole. */
const neighbour: Partial<Record<BaseArea, AreaKind[]>> = {
  'temple-left': ['sides', 'front_hairline'],
  'temple-right': ['sides', 'front_hairline'],
  hairline: ['top'],
  crown: ['top', 'nape'],
  nape: ['crown', 'sides'],
  top: ['crown'],
  'side-left': ['temples', 'nape', 'crown'],
  'side-right': ['temples', 'nape', 'crown'],
};

interface Drawn extends HeadArea {
  kind: AreaKind;
  regions: Region[];
}

/** What the areas that say where they are leave of a part of the head. */
const freeOf = (base: BaseArea, areas: readonly Drawn[]): Region[] =>
  leftOver(areas.flatMap((a) => a.regions.filter((r) => r.base === base).map((r) => r.slices))).map(
    (slices) => ({ base, slices }),
  );

/** Shares regions among areas that only say their kind: one each where there are as many, else in strips. */
function share(free: readonly Region[], index: number, of: number): Region[] {
  if (of === 1) return [...free];
  if (free.length >= of) return free.filter((_, i) => i % of === index);
  return free.map(({ base, slices }) => {
    const cut = parts.sides.includes(base) || parts.temples.includes(base) ? 'front-back' : 'left-right';
    const strip: Slice = { cut, index, of };
    return { base, slices: [...slices, strip] };
  });
}

/** Areas that say where they are; a part that another one of its kind also wants is no claim. */
function claimants(areas: readonly Drawn[]): Drawn[] {
  const silent = new Set(areas.filter((a) => a.regions.length === 0).map((a) => a.kind));
  const shared = (a: Drawn) => silent.has(a.kind) && a.regions.every((r) => r.slices.length === 0);
  return areas.filter((a) => a.regions.length > 0 && !shared(a));
}

/** The head's areas as the outlines draw them, each with its colour where one is known. */
export function outlineAreas(head: Head, colour: (area: string) => Rgb | undefined): HeadArea[] {
  const drawn = head.areas.map((area): Drawn => {
    const srgb = colour(area.id);
    const regions = area.woven ? [] : regionsIn(placesIn(area.id) ?? []);
    const kind = area.kind ?? 'other';
    const packets = area.woven && { of: area.woven.from, size: wovenWords(area)! };
    return {
      id: area.id,
      label: areaWords(area),
      kind,
      regions,
      ...(srgb ? { srgb } : {}),
      ...(packets ? { packets } : {}),
    };
  });
  const areas = drawn.filter((a) => !a.packets);
  const named = claimants(areas);
  for (const kind of Object.keys(parts) as AreaKind[]) {
    const rest = areas.filter((a) => a.kind === kind && !named.includes(a));
    const free = parts[kind].flatMap((base) => freeOf(base, named));
    rest.forEach((area, i) => (area.regions = share(free, i, rest.length)));
  }
  for (const base of BASE_AREAS) {
    const there = areas.filter((a) => a.regions.some((r) => r.base === base));
    if (there.some((a) => !named.includes(a))) continue;
    const kinds = [...(neighbour[base] ?? []), ...(Object.keys(parts) as AreaKind[])];
    const beside = kinds.filter((kind) => kind !== 'other').map((kind) => areas.find((a) => a.kind === kind));
    (there[0] ?? beside.find(Boolean))?.regions.push(...freeOf(base, named));
  }
  return drawn.map(({ kind: _, ...area }) => area);
}

/** Hair up to here stands off the head, cm; from there it hangs over the shoulders (how far hair reaches is by eye). */
const CROPPED_BELOW = 8;
const VERY_LONG_FROM = 45;
/** Short of this, cm, thin places show; so thin against the rest of the head that skin shows through. */
const THIN_SHOWS_BELOW = 20;
const THIN_BELOW = 0.75;

/** The outline's hair: tight curls, thin on top, or by its length. */
export function outlineStyle(head: Head): HairStyle {
  const texture = head.hair?.texture;
  if (texture === 'coily' || texture === 'curly') return 'curly';
  const longest = Math.max(...head.areas.flatMap((area) => area.spans.map((span) => span.to_cm)), 0);
  const thin = head.areas.some((area) => (area.hair_factor ?? 1) < THIN_BELOW);
  if (thin && longest < THIN_SHOWS_BELOW) return 'thinning';
  if (longest >= VERY_LONG_FROM) return 'very_long';
  return longest < CROPPED_BELOW ? 'cropped' : 'long';
}
