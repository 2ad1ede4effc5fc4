import { rejoined } from '../outlines/regions';
import type { BaseArea, Cut, Region, Slice } from '../outlines/types';

/**
 * Where on the head an area is, said by its name in the document: a part of the head, halves of it, or several of
 * these: "top", "sides left", "top front + crown". A name of the colourist's own says nothing about it.
 */
export interface Place {
  /** The part of the head, as areas are named before any is parted. */
  readonly part: Part;
  /** Halves, the larger first: a half of a half has two. */
  readonly halves: readonly Half[];
}
export type Half = keyof typeof HALVES;
export type Part = keyof typeof PARTS;

export const HALVES = {
  front: ['front-back', 0],
  back: ['front-back', 1],
  left: ['left-right', 0],
  right: ['left-right', 1],
  upper: ['upper-lower', 0],
  lower: ['upper-lower', 1],
} as const satisfies Record<string, readonly [Cut, number]>;

const PARTS = {
  'front hairline': ['hairline'],
  temples: ['temple-left', 'temple-right'],
  top: ['top'],
  crown: ['crown'],
  sides: ['side-left', 'side-right'],
  nape: ['nape'],
} as const satisfies Record<string, readonly BaseArea[]>;

/** The partings a comb makes there. */
const CUTS: Record<Part, readonly Cut[]> = {
  'front hairline': ['left-right'],
  temples: ['left-right', 'upper-lower'],
  top: ['front-back', 'left-right'],
  crown: ['left-right', 'upper-lower'],
  sides: ['left-right', 'front-back', 'upper-lower'],
  nape: ['left-right', 'upper-lower'],
};
/** A half of a half is as small as an area gets. */
const MOST_HALVES = 2;
/** Longest name of an area in the document. */
export const LONGEST = 60;

const cutOf = (half: Half): Cut => HALVES[half][0];
const isHalf = (word: string): word is Half => Object.hasOwn(HALVES, word);
const isPart = (words: string): words is Part => Object.hasOwn(PARTS, words);

function place(words: string): Place | undefined {
  const halves: Half[] = [];
  const left = words.split(' ');
  while (left.length > 1 && isHalf(left.at(-1)!)) halves.unshift(left.pop() as Half);
  const part = left.join(' ');
  const cuts = halves.map(cutOf);
  const fits = cuts.every((cut, i) => cuts.indexOf(cut) === i);
  return isPart(part) && fits ? { part, halves } : undefined;
}

/** The places an area's name says; undefined when it is a name of the colourist's own. */
export function placesIn(name: string): readonly Place[] | undefined {
  const places = name.split(' + ').map(place);
  return places.every((p) => p !== undefined) ? places : undefined;
}

const nameOf = ({ part, halves }: Place) => [part, ...halves].join(' ');

/** The pieces of the drawings that make up these places. */
export const regionsIn = (places: readonly Place[]): Region[] =>
  places.flatMap(({ part, halves }) => {
    const bases: readonly BaseArea[] = PARTS[part];
    const paired = bases.length === 2;
    const side = halves.find((half) => paired && cutOf(half) === 'left-right');
    const slices = halves
      .filter((half) => half !== side)
      .map((half): Slice => ({ cut: HALVES[half][0], index: HALVES[half][1], of: 2 }));
    return bases
      .filter((_, i) => side === undefined || i === HALVES[side][1])
      .map((base) => ({ base, slices }));
  });

/** How an area may be parted: `apart` into the places it was joined from, `halves` where its name says no place. */
export type Parting = Cut | 'apart' | 'halves';

export function partings(name: string): Parting[] {
  const places = placesIn(name);
  if (!places) return ['halves'];
  const [only] = places;
  if (places.length > 1 || !only) return ['apart'];
  if (only.halves.length >= MOST_HALVES) return [];
  return CUTS[only.part].filter((cut) => !only.halves.some((half) => cutOf(half) === cut));
}

/** The names of what an area becomes when it is parted so; empty when it cannot be. */
export function partedNames(name: string, parting: Cut | 'apart'): string[] {
  if (!partings(name).includes(parting)) return [];
  const places = placesIn(name)!;
  if (parting === 'apart') return places.map(nameOf);
  return (Object.keys(HALVES) as Half[])
    .filter((half) => cutOf(half) === parting)
    .map((half) => nameOf({ ...places[0]!, halves: [...places[0]!.halves, half] }));
}

/** The halves of one part that make it whole again become one place. */
function whole(places: readonly Place[]): Place[] {
  const parts = [...new Set(places.map((p) => p.part))];
  return parts.flatMap((part) => {
    const mine = places.filter((p) => p.part === part);
    const regions = rejoined(
      mine.map((p) => ({
        base: PARTS[part][0],
        slices: p.halves.map((half): Slice => ({ cut: HALVES[half][0], index: HALVES[half][1], of: 2 })),
      })),
    );
    return regions.map(({ slices }) => ({
      part,
      halves: slices.map((s) =>
        (Object.keys(HALVES) as Half[]).find((h) => cutOf(h) === s.cut && HALVES[h][1] === s.index)!,
      ),
    }));
  });
}

/** The name of the area that these become together; undefined when their names say no place or it would grow too long. */
export function joinedName(names: readonly string[]): string | undefined {
  const places = names.map(placesIn);
  if (!places.every((p) => p !== undefined)) return undefined;
  const name = whole(places.flat()).map(nameOf).join(' + ');
  return name.length <= LONGEST ? name : undefined;
}
