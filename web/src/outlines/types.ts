/** The parts of the head as the outlines know them, before any is split. Left and right are the client's. */
export const BASE_AREAS = [
  'hairline',
  'temple-left',
  'temple-right',
  'top',
  'crown',
  'side-left',
  'side-right',
  'nape',
] as const;
export type BaseArea = (typeof BASE_AREAS)[number];

export const VIEWS = ['front', 'left', 'right', 'back', 'top'] as const;
export type View = (typeof VIEWS)[number];

export type HairStyle = 'cropped' | 'thinning' | 'long' | 'very_long' | 'curly';

export const CUTS = ['front-back', 'left-right', 'upper-lower'] as const;
/** The way a parting runs: it separates these two. */
export type Cut = (typeof CUTS)[number];

/** The `index`-th of `of` equal parts, counted from the front, the client's left, or the upper end. */
export interface Slice {
  readonly cut: Cut;
  readonly index: number;
  readonly of: number;
}

/** A piece of a base area: first slice first, each later one within it. */
export interface Region {
  readonly base: BaseArea;
  readonly slices: readonly Slice[];
}

/** What one chooses: one region at first, several after merging. */
export interface HeadArea {
  readonly id: string;
  readonly label: string;
  readonly regions: readonly Region[];
  /** Its colour now, encoded sRGB 0..1; without it the area stays empty. */
  readonly srgb?: readonly [number, number, number];
  /** Packets taken out of another area: they lie in it and are chosen in the list; `size` in words. */
  readonly packets?: { readonly of: string; readonly size: string };
}
