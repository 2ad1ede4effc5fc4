import { drawnColours, expectedMean, type Linear } from './colour';
import { rnd } from './random';
import type { HairShape } from './style';
import type { Half, Population, StrandPicture, StrandSpan } from './types';

/** Columns before the colours: (end px, shift of the joins px, height 0..1, 0) and (shift of the sheen, its strength, 0, 0). */
export const OWN_COLUMNS = 2;

/**
 * All fibres: one row each, 4 floats per column. After the fibre's own columns come its linear RGB colours, one column
 * per span, today's first, then the planned ones.
 */
export interface FibreTable {
  readonly rows: number;
  readonly columns: number;
  readonly data: Float32Array;
}

const JITTER = 0.36;

/** Where each fibre of the bed, then each flyaway, rests across the strip, 0..1 from top to bottom. */
export function restPlaces(shape: HairShape): { bed: number[]; flyaways: number[] } {
  const bed: number[] = [];
  for (let lock = 0; lock < shape.locks; lock++) {
    for (let i = 0; i < shape.perLock; i++) bed.push((lock + (i + 0.5) / shape.perLock) / shape.locks);
  }
  const flyaways = Array.from({ length: shape.flyaways }, (_, f) => (f + 0.5) / shape.flyaways);
  return { bed, flyaways };
}

/** Whole fibres for each share of `count` (largest remainder); a share worth a quarter of a fibre gets one. */
export function quotas(shares: readonly number[], count: number): number[] {
  const total = shares.reduce((a, b) => a + b, 0) || 1;
  const exact = shares.map((s) => (s / total) * count);
  const whole = exact.map((e) => (e >= 0.25 ? Math.max(1, Math.floor(e)) : 0));
  let left = count - whole.reduce((a, b) => a + b, 0);
  const order = exact.map((e, i) => ({ i, rest: e - (whole[i] as number) }));
  while (left !== 0 && order.length > 0) {
    const step = Math.sign(left);
    order.sort((a, b) => step * (b.rest - a.rest));
    const pick = order[0] as { i: number; rest: number };
    whole[pick.i] = (whole[pick.i] as number) + step;
    pick.rest -= step;
    left -= step;
  }
  return whole;
}

/** Distance in mm from the middle of the nearest packet; as many whole packets as fit lie evenly about the middle. */
function fromPacket(placeMm: number, heightMm: number, everyMm: number, nth: number): number {
  const between = Math.round(heightMm / everyMm) % 2 === 0 ? 0.5 : 0;
  const shifted = (placeMm - heightMm / 2) / everyMm + between + nth * 0.37;
  return Math.abs(shifted - Math.round(shifted)) * everyMm;
}

/** Which population each fibre belongs to. The same fibre keeps its rank in every span, so white stays white. */
export function assign(
  list: readonly Population[],
  places: readonly number[],
  heightMm: number,
  seed: number,
): number[] {
  const count = places.length;
  const wanted = quotas(
    list.map((p) => p.share),
    count,
  );
  const owner = new Array<number>(count).fill(-1);
  let nth = 0;
  list.forEach((population, p) => {
    if (!population.packets) return;
    const { widthMm, everyMm } = population.packets;
    const score = places.map((place, i) => {
      const distance = fromPacket(place * heightMm, heightMm, everyMm, nth);
      const inside = distance <= widthMm / 2;
      return { i, key: inside ? rnd(seed, i, 11) : 1 + distance };
    });
    nth++;
    score.sort((a, b) => a.key - b.key);
    let left = wanted[p] as number;
    for (const { i } of score) {
      if (left === 0) break;
      if (owner[i] !== -1) continue;
      owner[i] = p;
      left--;
    }
  });
  const free = places
    .map((_, i) => ({ i, key: (i * 0.6180339887 + 0.45 * rnd(seed, i, 12)) % 1 }))
    .filter(({ i }) => owner[i] === -1)
    .sort((a, b) => a.key - b.key);
  let next = 0;
  list.forEach((population, p) => {
    if (population.packets) return;
    for (let k = wanted[p] as number; k > 0 && next < free.length; k--)
      owner[(free[next++] as { i: number }).i] = p;
  });
  return owner;
}

/** Linear colours of the given fibres, each a little lighter or darker; their mean is exactly `mean`. */
function colourFibres(
  owner: readonly number[],
  colours: readonly Linear[],
  mean: Linear,
  seed: number,
): Linear[] {
  const out = owner.map((p, i): Linear => {
    const c = colours[p] as Linear;
    const room = Math.min(JITTER, 0.9 / Math.max(...c, 1e-6) - 1);
    const light = 1 + Math.max(room, 0) * (2 * rnd(seed, i, 13) - 1);
    const warm = 0.04 * (2 * rnd(seed, i, 14) - 1);
    return [c[0] * light * (1 + warm), c[1] * light, c[2] * light * (1 - warm)];
  });
  for (const k of [0, 1, 2] as const) {
    const drawn = out.reduce((sum, c) => sum + c[k], 0) / out.length;
    const scale = drawn > 1e-9 ? mean[k] / drawn : 1;
    for (const c of out) c[k] = Math.min(c[k] * scale, 1);
  }
  return out;
}

function spanColours(span: StrandSpan, half: Half, shape: HairShape, seed: number): Linear[] {
  const list = half === 'planned' && span.planned.length > 0 ? span.planned : span.today;
  const bed = span.mixedBed?.[half];
  const colours = drawnColours(list, bed);
  const mean = expectedMean(list, bed);
  const heightMm = (shape.height / shape.pxPerCm) * 10;
  const places = restPlaces(shape);
  return [places.bed, places.flyaways].flatMap((layer, l) => {
    const owner = assign(list, layer, heightMm, seed + l);
    return colourFibres(owner, colours, mean, seed + l);
  });
}

/** The table for a picture; a span without a plan shows today's hair in both halves. */
export function fibreTable(picture: StrandPicture, shape: HairShape, seed: number): FibreTable {
  const spans = picture.spans.length;
  const rows = shape.locks * shape.perLock + shape.flyaways;
  const columns = OWN_COLUMNS + spans * 2;
  const data = new Float32Array(rows * columns * 4);
  for (let row = 0; row < rows; row++) {
    const end = shape.width - shape.fray * rnd(seed, row, 21) ** 2;
    const shift = shape.pxPerCm * 0.22 * (rnd(seed, row, 22) - 0.5);
    data.set([end, shift, rnd(seed, row, 20), 0, rnd(seed, row, 23) - 0.5, rnd(seed, row, 24), 0, 0], row * columns * 4);
  }
  (['today', 'planned'] as const).forEach((half, h) => {
    picture.spans.forEach((span, s) => {
      spanColours(span, half, shape, seed).forEach((c, row) => {
        data.set([c[0], c[1], c[2], 1], (row * columns + OWN_COLUMNS + h * spans + s) * 4);
      });
    });
  });
  return { rows, columns, data };
}
