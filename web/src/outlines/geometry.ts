import type { BaseArea, Cut, Region, View } from './types';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How a cut shows in a view: along x or y, from low to high or reversed; or hidden, where only one part is seen. */
type Shown = 'x' | '-x' | 'y' | '-y' | 'first' | 'last' | 'near';

const CUT_IN_VIEW: Record<View, Record<Cut, Shown>> = {
  front: { 'front-back': 'first', 'left-right': '-x', 'upper-lower': 'y' },
  left: { 'front-back': 'x', 'left-right': 'first', 'upper-lower': 'y' },
  right: { 'front-back': 'x', 'left-right': 'last', 'upper-lower': 'y' },
  back: { 'front-back': 'last', 'left-right': 'x', 'upper-lower': 'y' },
  top: { 'front-back': 'y', 'left-right': 'x', 'upper-lower': 'near' },
};

/** The part of `box` that a region keeps in a view; null when it is turned away. The right side is drawn mirrored. */
export function regionBox(region: Region, view: View, box: Box): Box | null {
  let { x, y, width, height } = box;
  for (const { cut, index, of } of region.slices) {
    const shown = CUT_IN_VIEW[view][cut];
    if (shown === 'near') {
      if (index !== 0) return null;
    } else if (shown === 'first' || shown === 'last') {
      if (index !== (shown === 'first' ? 0 : of - 1)) return null;
    } else {
      const place = shown.startsWith('-') ? of - 1 - index : index;
      if (shown.endsWith('x')) {
        width /= of;
        x += place * width;
      } else {
        height /= of;
        y += place * height;
      }
    }
  }
  return { x, y, width, height };
}

/** A bumpy arc of an ellipse from angle `from` to `to` (degrees, 0 = right, 90 = down) in `count` bumps. */
export function bumps(
  cx: number,
  cy: number,
  rx: number,
  ry: number,
  from: number,
  to: number,
  count: number,
): string {
  const point = (i: number): [number, number] => {
    const a = ((from + ((to - from) * i) / count) * Math.PI) / 180;
    const wobble = 1 + 0.025 * Math.sin(i * 2.4);
    return [cx + rx * wobble * Math.cos(a), cy + ry * wobble * Math.sin(a)];
  };
  let d = `${point(0)[0].toFixed(1)} ${point(0)[1].toFixed(1)}`;
  for (let i = 1; i <= count; i++) {
    const [x0, y0] = point(i - 1);
    const [x, y] = point(i);
    const r = Math.hypot(x - x0, y - y0) * (0.58 + 0.06 * Math.sin(i * 1.7));
    d += ` A${r.toFixed(1)} ${r.toFixed(1)} 0 0 ${to > from ? 1 : 0} ${x.toFixed(1)} ${y.toFixed(1)}`;
  }
  return d;
}

/** Small open curls inside a box, row by row, each turned a little; the box is clipped to the hair. */
export function curls(box: Box, step: number): string {
  let d = '';
  for (let j = 0; j * step * 0.8 < box.height; j++) {
    for (let i = 0; i * step < box.width; i++) {
      const x = box.x + (i + (j % 2) / 2) * step + 2 * Math.sin(i * 3.1 + j * 1.7);
      const y = box.y + j * step * 0.8 + 2 * Math.sin(i * 1.3 + j * 2.9);
      const r = step * (0.2 + 0.05 * Math.sin(i * 2.2 + j));
      const a = i * 1.9 + j * 2.3;
      const [cx, sx] = [Math.cos(a) * r, Math.sin(a) * r];
      d += `M${(x - cx).toFixed(1)} ${(y - sx).toFixed(1)}a${r.toFixed(1)} ${r.toFixed(1)} 0 1 1 ${(cx + sx).toFixed(1)} ${(sx - cx + r).toFixed(1)}`;
    }
  }
  return d;
}

/** The same area on the other side of the head, for the mirrored view. */
export const mirrored = (base: BaseArea): BaseArea =>
  base.endsWith('-left')
    ? (base.replace('-left', '-right') as BaseArea)
    : base.endsWith('-right')
      ? (base.replace('-right', '-left') as BaseArea)
      : base;
