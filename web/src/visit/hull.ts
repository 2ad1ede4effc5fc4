import type { Lab } from '../api/types';

// Only the drawing: what can be had, the server decides.

/** Twice the area that turns from p over q to r; positive = counter-clockwise in the a*b* plane. */
const turn = (p: Lab, q: Lab, r: Lab) => (q.a - p.a) * (r.b - p.b) - (q.b - p.b) * (r.a - p.a);

/** One side of the outline, from the first point to the last. */
function chain(points: readonly Lab[]): Lab[] {
  const kept: Lab[] = [];
  for (const point of points) {
    while (kept.length >= 2 && turn(kept[kept.length - 2]!, kept[kept.length - 1]!, point) <= 0) kept.pop();
    kept.push(point);
  }
  return kept;
}

/** The outline of these colours seen from above (a*b* plane): corners counter-clockwise, none on a straight line. */
export function outlineOf(colours: readonly Lab[]): Lab[] {
  const points = colours.toSorted((p, q) => p.a - q.a || p.b - q.b);
  if (points.length < 2) return points;
  return [...chain(points).slice(0, -1), ...chain(points.toReversed()).slice(0, -1)];
}

/** A square of the a*b* plane, and the lightness beside it. */
export interface Frame {
  a: number;
  b: number;
  side: number;
  dark: number;
  light: number;
}

/** The smallest frame that holds all these colours and grey; undefined without colours. */
export function frameOf(colours: readonly Lab[]): Frame | undefined {
  if (!colours.length) return undefined;
  const as = [0, ...colours.map((c) => c.a)];
  const bs = [0, ...colours.map((c) => c.b)];
  const ls = colours.map((c) => c.l);
  const [left, right, low, high] = [Math.min(...as), Math.max(...as), Math.min(...bs), Math.max(...bs)];
  const side = Math.max(right - left, high - low, 1);
  return {
    a: (left + right - side) / 2,
    b: (low + high - side) / 2,
    side,
    dark: Math.min(...ls),
    light: Math.max(...ls),
  };
}

const part = (value: number, from: number, length: number) =>
  length > 0 ? Math.min(1, Math.max(0, (value - from) / length)) : 0.5;

/** Where a colour lies in the frame, parts of one from its left (green) and top (yellow, light); outside = at the edge. */
export function placeIn(frame: Frame, colour: Lab) {
  return {
    x: part(colour.a, frame.a, frame.side),
    y: 1 - part(colour.b, frame.b, frame.side),
    up: 1 - part(colour.l, frame.dark, frame.light - frame.dark),
  };
}

/** The level as light as `l`, between the levels of `scale` (dark to light, level 1 first); ends are kept. */
export function levelAsLight(l: number, scale: readonly number[]): number {
  const above = scale.findIndex((one) => one > l);
  if (above <= 0) return above === 0 ? 1 : scale.length;
  const [below, next] = [scale[above - 1]!, scale[above]!];
  return above + (l - below) / (next - below);
}
