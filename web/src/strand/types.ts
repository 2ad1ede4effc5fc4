/** What the strand draws: plain data, already predicted elsewhere. No rule of the trade lives here. */

/** Encoded sRGB, each channel 0..1. */
export type Rgb = readonly [number, number, number];

/** Stripes of hair taken out in packets, at their real width across the strip. */
export interface Packets {
  /** Width of one packet in mm, > 0. */
  readonly widthMm: number;
  /** Distance from the start of one packet to the start of the next in mm, ≥ widthMm. */
  readonly everyMm: number;
  /** Packets that hold several kinds of fibres: the populations of one group share its stripes. */
  readonly group?: PacketGroup;
}

export interface PacketGroup {
  /** What the group is called; together its populations are told by this name. */
  readonly name: string;
  /** Its number among the groups of the strip, 0 for the first: each has stripes of its own. */
  readonly nth: number;
  /** Colour in which its fibres are seen together. */
  readonly bed: Rgb;
}

export interface Population {
  readonly name: string;
  /** Share of all fibres of this span, 0..1; the shares of one list add up to 1. */
  readonly share: number;
  /** Colour of a bundle of these fibres under the chosen light. */
  readonly srgb: Rgb;
  /** True when the predicted colour lies outside sRGB, so that `srgb` is only the nearest one. */
  readonly outOfGamut: boolean;
  readonly packets?: Packets;
}

/** The likely range of the planned colour: 10th, 50th and 90th percentile. */
export interface ColourFan {
  readonly p10: Rgb;
  readonly p50: Rgb;
  readonly p90: Rgb;
}

/**
 * Colour of the bed made by all fibres that are mixed together (those not in packets), when it differs from the
 * mean of its populations: a white fibre among dark ones returns less light than among its own kind.
 * With it the drawn fibres keep their differences but average to this colour.
 */
export interface MixedBed {
  readonly today?: Rgb;
  readonly planned?: Rgb;
}

export interface StrandSpan {
  readonly id: string;
  readonly fromCm: number;
  readonly toCm: number;
  readonly label: string;
  readonly today: readonly Population[];
  /** Empty when nothing is planned yet: only the upper half is drawn. */
  readonly planned: readonly Population[];
  readonly mixedBed?: MixedBed;
  /** Letters of the bowls that go here, the first one first. */
  readonly bowls?: readonly string[];
  readonly fan?: ColourFan;
  /** Here only what lies in packets changes: the hair between goes on, no line is drawn and its letters stand before. */
  readonly goesOn?: boolean;
}

export type HairTexture = 'straight' | 'wavy' | 'curly' | 'coily';

export interface Hair {
  readonly texture: HairTexture;
  /** Mean diameter of one fibre in µm, 30..130. */
  readonly diameterUm: number;
}

export interface StrandPicture {
  /** Length from scalp to tip in cm, curl measured stretched; > 0. */
  readonly lengthCm: number;
  /** From scalp to tip, without holes or overlaps. */
  readonly spans: readonly StrandSpan[];
  readonly hair: Hair;
}

export type Half = 'today' | 'planned';

/** What is wrong with a picture: a code, where, and the figures for the sentence. */
export interface StrandProblem {
  readonly code:
    | 'length_not_positive'
    | 'no_spans'
    | 'span_empty'
    | 'spans_not_joined'
    | 'spans_not_to_tip'
    | 'no_populations'
    | 'shares_not_one'
    | 'colour_out_of_range'
    | 'packets_impossible'
    | 'diameter_out_of_range';
  readonly span?: string;
  readonly found?: number;
}
