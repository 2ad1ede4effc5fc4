import type { Population, Rgb } from './types';

/** Linear-light sRGB, each channel 0..1. */
export type Linear = [number, number, number];

/** IEC 61966-2-1 decoding of one channel, 0..1 → 0..1. */
export const decode = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

/** IEC 61966-2-1 encoding of one channel, 0..1 → 0..1. */
export const encode = (v: number): number => (v <= 0.0031308 ? v * 12.92 : 1.055 * v ** (1 / 2.4) - 0.055);

export const toLinear = (c: Rgb): Linear => [decode(c[0]), decode(c[1]), decode(c[2])];

/** Whole numbers 0..255 for a canvas or a CSS colour. */
export const toBytes = (c: Rgb): [number, number, number] => [
  Math.round(c[0] * 255),
  Math.round(c[1] * 255),
  Math.round(c[2] * 255),
];

export const cssColour = (c: Rgb): string => {
  const [r, g, b] = toBytes(c);
  return `rgb(${r} ${g} ${b})`;
};

export const mix = (a: Rgb, b: Rgb, t: number): Linear => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** CIE lightness L* (0..100) of an encoded colour, D65 luminance weights of sRGB. */
export function lightness(c: Rgb): number {
  const [r, g, b] = toLinear(c);
  const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
  return y > 216 / 24389 ? 116 * Math.cbrt(y) - 16 : (y * 24389) / 27;
}

/** Share-weighted mean in linear light; [0,0,0] for an empty list. */
export function mixture(list: readonly { share: number; linear: Linear }[]): Linear {
  const sum: Linear = [0, 0, 0];
  let weight = 0;
  for (const { share, linear } of list) {
    weight += share;
    for (const k of [0, 1, 2] as const) sum[k] += share * linear[k];
  }
  return weight > 0 ? [sum[0] / weight, sum[1] / weight, sum[2] / weight] : [0, 0, 0];
}

/**
 * Linear colours of the populations as drawn. Where the colour of the mixed bed is given, the darkest mixed fibres keep
 * their colour and the lighter ones are drawn nearer to it, per channel, so that the mean is the bed's.
 */
export function drawnColours(list: readonly Population[], bed: Rgb | undefined): Linear[] {
  const colours = list.map((p) => toLinear(p.srgb));
  const pick = (which: (p: Population) => boolean) =>
    list.flatMap((p, i) => (which(p) ? [{ share: p.share, linear: colours[i] as Linear, i }] : []));
  drawNearer(
    colours,
    pick((p) => !p.packets),
    bed,
  );
  const groups = new Map(
    list.flatMap(({ packets }) => (packets?.group ? [[packets.group.nth, packets.group]] : [])),
  );
  for (const { nth, bed: own } of groups.values())
    drawNearer(
      colours,
      pick((p) => p.packets?.group?.nth === nth),
      own,
    );
  return colours;
}

/** Moves `colours` of the fibres that are `mixed` so that their mean is the bed's. */
function drawNearer(
  colours: Linear[],
  mixed: readonly { share: number; linear: Linear; i: number }[],
  bed: Rgb | undefined,
): void {
  if (!bed || mixed.length === 0) return;
  const wanted = toLinear(bed);
  const mean = mixture(mixed);
  for (const k of [0, 1, 2] as const) {
    const floor = Math.min(...mixed.map((m) => m.linear[k]));
    const spread = mean[k] - floor;
    const nearer = spread > 1e-9 && wanted[k] >= floor;
    for (const { i, linear } of mixed) {
      const colour = colours[i] as Linear;
      colour[k] = nearer
        ? floor + (linear[k] - floor) * ((wanted[k] - floor) / spread)
        : linear[k] * (wanted[k] / Math.max(mean[k], 1e-9));
    }
  }
}

/** The mean that the drawn fibres of one half of one span must have, in linear light. */
export function expectedMean(list: readonly Population[], bed?: Rgb): Linear {
  const colours = drawnColours(list, bed);
  return mixture(list.map((p, i) => ({ share: p.share, linear: colours[i] as Linear })));
}

/**
 * The colour of the mixed fibres where `whole` is that of all hair, packets included; packets lie beside the bed, so
 * they add light by their share. Never darker than the darkest or lighter than the lightest mixed fibre.
 */
export function bedBetweenPackets(list: readonly Population[], whole: Rgb): Rgb {
  const mixed = list.filter((p) => !p.packets && p.share > 0).map((p) => toLinear(p.srgb));
  if (mixed.length === 0 || list.every((p) => !p.packets)) return whole;
  const apart = list.filter((p) => p.packets);
  const left = 1 - apart.reduce((sum, p) => sum + p.share, 0);
  const all = toLinear(whole);
  return [0, 1, 2].map((k) => {
    const light = apart.reduce((sum, p) => sum + p.share * (toLinear(p.srgb)[k] ?? 0), 0);
    const own = mixed.map((c) => c[k] ?? 0);
    const bed = ((all[k] ?? 0) - light) / Math.max(left, 1e-6);
    return encode(Math.min(Math.max(bed, Math.min(...own)), Math.max(...own)));
  }) as unknown as Rgb;
}
