import { drawnColours, expectedMean, type Linear } from './colour';
import { rnd } from './random';
import type { HairShape } from './style';
import type { Weights } from './weights';
import type { Half, Packets, Population, Rgb, StrandPicture, StrandSpan } from './types';

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

/** Where each fibre, those of the locks before the flyaways, rests across the strip: 0..1 from top to bottom. */
export function restPlaces(shape: HairShape): number[] {
  const bed: number[] = [];
  for (let lock = 0; lock < shape.locks; lock++) {
    for (let i = 0; i < shape.perLock; i++) bed.push((lock + (i + 0.5) / shape.perLock) / shape.locks);
  }
  const flyaways = Array.from({ length: shape.flyaways }, (_, f) => (f + 0.5) / shape.flyaways);
  return [...bed, ...flyaways];
}

/** Distance in mm from the middle of the nearest packet; as many whole packets as fit lie evenly about the middle. */
function fromPacket(placeMm: number, heightMm: number, everyMm: number, nth: number): number {
  const between = Math.round(heightMm / everyMm) % 2 === 0 ? 0.5 : 0;
  const shifted = (placeMm - heightMm / 2) / everyMm + between + nth * 0.37;
  return Math.abs(shifted - Math.round(shifted)) * everyMm;
}

interface Ranked {
  readonly i: number;
  readonly key: number;
}

/** Gives the first of `order` to `p` until they carry `wanted` of the weight; returns the rest. */
function take(
  order: readonly Ranked[],
  wanted: number,
  p: number,
  weight: Float32Array,
  owner: number[],
): Ranked[] {
  let left = wanted;
  let n = 0;
  for (const { i } of order) {
    const w = weight[i] ?? 0;
    if (left < w / 2) break;
    owner[i] = p;
    left -= w;
    n++;
  }
  return order.slice(n);
}

interface Stripes {
  readonly packets: Packets;
  readonly nth: number;
  /** The populations that lie in them. */
  readonly inside: readonly Shared[];
}
interface Shared {
  readonly share: number;
  readonly p: number;
}

/** The packets of a list, each group once; a population without a group has stripes of its own. */
function stripesOf(list: readonly Population[]): Stripes[] {
  const groups = new Map<number, Stripes & { inside: Shared[] }>();
  const alone: Stripes[] = [];
  list.forEach(({ packets, share }, p) => {
    const nth = packets?.group?.nth;
    if (!packets) return;
    if (nth === undefined) alone.push({ packets, nth: alone.length, inside: [{ share, p }] });
    else if (groups.has(nth)) groups.get(nth)?.inside.push({ share, p });
    else groups.set(nth, { packets, nth, inside: [{ share, p }] });
  });
  const after = Math.max(-1, ...groups.keys()) + 1;
  return [...groups.values(), ...alone.map((one) => ({ ...one, nth: after + one.nth }))];
}

/** Shares fibres out in their order; the last population takes what is left. */
function shareOut(
  order: readonly Ranked[],
  among: readonly Shared[],
  total: number,
  weight: Float32Array,
  owner: number[],
): void {
  let free = order;
  among.forEach(({ share, p }, n) => {
    if (n < among.length - 1) free = take(free, share * total, p, weight, owner);
    else for (const { i } of free) owner[i] = p;
  });
}

/**
 * Which population each fibre belongs to, so that each carries its share of the light. Fibres in packets come first;
 * the others keep their rank in every span, so that a white fibre stays the same fibre along the hair.
 */
export function assign(
  list: readonly Population[],
  places: readonly number[],
  heightMm: number,
  seed: number,
  weight: Float32Array,
): number[] {
  const total = weight.reduce((a, b) => a + b, 0);
  const owner = new Array<number>(places.length).fill(-1);
  let free: Ranked[] = places.map((_, i) => ({ i, key: (i * 0.6180339887 + 0.45 * rnd(seed, i, 12)) % 1 }));
  free.sort((a, b) => a.key - b.key);
  const rank = new Map(free.map((one, n) => [one.i, n]));
  for (const { packets, nth, inside } of stripesOf(list)) {
    const share = inside.reduce((sum, one) => sum + one.share, 0);
    const order = free.map(({ i }) => {
      const distance = fromPacket((places[i] ?? 0) * heightMm, heightMm, packets.everyMm, nth);
      return { i, key: distance <= packets.widthMm / 2 ? rnd(seed, i, 11) : 1 + distance };
    });
    order.sort((a, b) => a.key - b.key);
    const rest = take(order, share * total, inside[0]!.p, weight, owner);
    const taken = order.slice(0, order.length - rest.length);
    taken.sort((a, b) => (rank.get(a.i) ?? 0) - (rank.get(b.i) ?? 0));
    shareOut(taken, inside, total, weight, owner);
    free = free.filter(({ i }) => owner[i] === -1);
  }
  const mixed = list.flatMap((m, p) => (!m.packets && m.share > 0 ? [{ share: m.share, p }] : []));
  shareOut(free, mixed, total, weight, owner);
  const last = list.reduce((best, m, p) => (m.share > (list[best]?.share ?? 0) ? p : best), 0);
  return owner.map((p) => (p === -1 ? last : p));
}

/** Linear colours of the fibres, each a little lighter or darker, scaled so that what one sees of them has the mean `mean`. */
function colourFibres(
  owner: readonly number[],
  colours: readonly Linear[],
  mean: Linear,
  seed: number,
  seen: Float32Array,
  light: Float32Array,
): Linear[] {
  const out = owner.map((p, i): Linear => {
    const c = colours[p] as Linear;
    const room = Math.max(0, Math.min(JITTER, 0.85 / Math.max(...c, 1e-6) - 1));
    const own = 1 + room * (2 * rnd(seed, i, 13) - 1);
    const warm = 0.05 * (2 * rnd(seed, i, 14) - 1);
    return [c[0] * own * (1 + warm), c[1] * own, c[2] * own * (1 - warm)];
  });
  const points = seen.reduce((a, b) => a + b, 0);
  for (const k of [0, 1, 2] as const) {
    const drawn = out.reduce((sum, c, i) => sum + c[k] * (light[i] ?? 0), 0) / points;
    const scale = drawn > 1e-9 ? mean[k] / drawn : 1;
    for (const c of out) c[k] = Math.min(c[k] * scale, 1);
  }
  return out;
}

/** Column `s` of a table of rows × spans. */
const column = (table: Float32Array, spans: number, s: number): Float32Array =>
  Float32Array.from({ length: table.length / spans }, (_, row) => table[row * spans + s] ?? 0);

/** Colours already worked out for a strip: its weights stand for its shape; the newest few of each span. */
const KEPT_COLOURS = 4;
const coloured = new WeakMap<Weights, Map<number, { key: string; colours: Linear[] }[]>>();

/** The same list and bed on the same fibres again are not worked out again. */
function spanColours(
  picture: StrandPicture,
  s: number,
  half: Half,
  shape: HairShape,
  seed: number,
  weights: Weights,
): Linear[] {
  const span = picture.spans[s] as StrandSpan;
  const shown = half === 'planned' && span.planned.length > 0 ? 'planned' : 'today';
  const list = span[shown];
  const bed = span.mixedBed?.[shown];
  const places = coloured.get(weights) ?? new Map<number, { key: string; colours: Linear[] }[]>();
  coloured.set(weights, places);
  const key = JSON.stringify([list.map(({ share, srgb, packets }) => [share, srgb, packets]), bed, seed]);
  const kept = places.get(s) ?? [];
  const found = kept.find((one) => one.key === key);
  if (found) return found.colours;
  const colours = workOut(list, bed, s, shape, seed, weights);
  places.set(s, [{ key, colours }, ...kept].slice(0, KEPT_COLOURS));
  return colours;
}

function workOut(
  list: readonly Population[],
  bed: Rgb | undefined,
  s: number,
  shape: HairShape,
  seed: number,
  weights: Weights,
): Linear[] {
  let seen = column(weights.seen, weights.spans, s);
  let light = column(weights.light, weights.spans, s);
  if (!seen.some((v) => v > 0)) seen = light = new Float32Array(seen.length).fill(1); // narrower than one point
  const heightMm = (shape.height / shape.pxPerCm) * 10;
  const owner = assign(list, restPlaces(shape), heightMm, seed, light);
  return colourFibres(owner, drawnColours(list, bed), expectedMean(list, bed), seed, seen, light);
}

/** The table for a picture; a span without a plan shows today's hair in both halves. */
export function fibreTable(
  picture: StrandPicture,
  shape: HairShape,
  seed: number,
  weights: Weights,
): FibreTable {
  const spans = picture.spans.length;
  const rows = shape.locks * shape.perLock + shape.flyaways;
  const columns = OWN_COLUMNS + spans * 2;
  const data = new Float32Array(rows * columns * 4);
  for (let row = 0; row < rows; row++) {
    const end = shape.width - shape.fray * rnd(seed, row, 21) ** 2;
    const shift = shape.pxPerCm * 0.22 * (rnd(seed, row, 22) - 0.5);
    data.set(
      [end, shift, rnd(seed, row, 20), 0, rnd(seed, row, 23) - 0.5, rnd(seed, row, 24), 0, 0],
      row * columns * 4,
    );
  }
  (['today', 'planned'] as const).forEach((half, h) => {
    picture.spans.forEach((_, s) => {
      spanColours(picture, s, half, shape, seed, weights).forEach((c, row) => {
        data.set([c[0], c[1], c[2], 1], (row * columns + OWN_COLUMNS + h * spans + s) * 4);
      });
    });
  });
  return { rows, columns, data };
}
