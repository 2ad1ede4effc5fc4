import { rnd } from './random';
import type { HairShape } from './style';

/**
 * Where every lock, then every flyaway, runs: one row each, one column per CSS px along the hair, 4 floats:
 * middle y (px), 1 / half width (1/px), height above the others, phase of its wave (rad).
 */
export interface Paths {
  readonly columns: number;
  readonly rows: number;
  readonly data: Float32Array;
}

const TAU = Math.PI * 2;

const smooth = (from: number, to: number, x: number): number => {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)));
  return t * t * (3 - 2 * t);
};

interface Wave {
  readonly own: number;
  readonly offset: number;
  readonly perPx: number;
}

/** The wave at `place` (in locks) across the strip: partly shared with its neighbours, partly its own. */
function waveAt(shape: HairShape, seed: number, place: number, own: number): Wave {
  const apart = 1 - shape.style.together;
  const shared = 1.5 * Math.sin(place * 0.45 + rnd(seed, 7, 3) * TAU) + rnd(seed, 8, 3) * TAU;
  return {
    own,
    offset: shared + apart * own * TAU,
    perPx: TAU / (shape.wavelength * (1 + 0.22 * apart * (own - 0.5))),
  };
}

/** Sideways displacement in px; hair leaves the scalp in order and finds its wave within the first centimetre. */
function wander(shape: HairShape, wave: Wave, x: number): number {
  const phase = x * wave.perPx + wave.offset;
  const grown = smooth(0, Math.min(shape.wavelength * 0.5, shape.pxPerCm * 1.6), x);
  const { own } = wave;
  const path =
    0.86 * Math.sin(phase) + 0.22 * Math.sin(phase * 0.53 + own * 9) + 0.1 * Math.sin(phase * 2 + own * 5);
  return shape.amplitude * grown * path;
}

function lockPath(shape: HairShape, seed: number, lock: number, row: Float32Array): void {
  const own = rnd(seed, lock, 1);
  const wave = waveAt(shape, seed, lock, own);
  const rest = shape.margin + (lock + 0.5 + 0.3 * (own - 0.5)) * shape.spacing;
  const height = (0.9 - 0.6 * shape.style.turn) * rnd(seed, lock, 4);
  const thin = 0.35 * rnd(seed, lock, 2);
  for (let x = 0; x * 4 < row.length; x++) {
    const phase = x * wave.perPx + wave.offset;
    const half = shape.halfLock * (1 - thin * smooth(shape.width - shape.fray * 2.2, shape.width, x));
    row[x * 4] = rest + wander(shape, wave, x);
    row[x * 4 + 1] = 1 / half;
    row[x * 4 + 2] = height + shape.style.turn * Math.cos(phase);
    row[x * 4 + 3] = phase;
  }
}

function flyawayPath(shape: HairShape, seed: number, nth: number, row: Float32Array): void {
  const own = rnd(seed, nth, 5);
  const step = (shape.height - 2 * shape.margin) / shape.flyaways;
  const middle = (nth + 0.5) * step;
  const wave = waveAt(shape, seed, middle / shape.spacing, own);
  const slow = 0.008 + 0.012 * rnd(seed, nth, 6);
  for (let x = 0; x * 4 < row.length; x++) {
    row[x * 4] = shape.margin + middle + wander(shape, wave, x) + 0.75 * step * Math.sin(x * slow + own * 23);
    row[x * 4 + 1] = 2 / shape.fibrePx;
    row[x * 4 + 2] = 9;
    row[x * 4 + 3] = x * wave.perPx + wave.offset;
  }
}

export function hairPaths(shape: HairShape, seed: number): Paths {
  const columns = Math.ceil(shape.width) + 2;
  const rows = shape.locks + shape.flyaways;
  const data = new Float32Array(columns * rows * 4);
  for (let r = 0; r < rows; r++) {
    const row = data.subarray(r * columns * 4, (r + 1) * columns * 4);
    if (r < shape.locks) lockPath(shape, seed, r, row);
    else flyawayPath(shape, seed, r - shape.locks, row);
  }
  return { columns, rows, data };
}
