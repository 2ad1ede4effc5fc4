import { cssColour, encode, type Linear } from './colour';
import { fibreTable, OWN_COLUMNS, restPlaces, type FibreTable } from './fibres';
import type { PaintRequest } from './painter';
import type { Pen } from './overlay';
import { rnd } from './random';
import { evenWeights } from './weights';
import { hairShape, type HairShape } from './style';

/** The same hair in kind with plain canvas strokes, for browsers without WebGL2. */

const TAU = Math.PI * 2;

const encoded = (c: Linear): Linear => [encode(c[0]), encode(c[1]), encode(c[2])];

function colourOf(table: FibreTable, row: number, column: number): Linear {
  const at = (row * table.columns + OWN_COLUMNS + column) * 4;
  return [table.data[at] ?? 0, table.data[at + 1] ?? 0, table.data[at + 2] ?? 0];
}

/** Colours along one fibre: flat inside each span, a short change at each join. */
function along(
  pen: Pen,
  request: PaintRequest,
  table: FibreTable,
  row: number,
  column: number,
): CanvasGradient {
  const { layout, picture } = request;
  const gradient = pen.createLinearGradient(0, 0, layout.hairWidth, 0);
  picture.spans.forEach((span, s) => {
    const colour = cssColour(encoded(colourOf(table, row, column + s)));
    const soft = Math.min(0.12, (span.toCm - span.fromCm) / 2);
    const from = s === 0 ? 0 : span.fromCm + soft;
    const to = s === picture.spans.length - 1 ? picture.lengthCm : span.toCm - soft;
    gradient.addColorStop(Math.min(from / picture.lengthCm, 1), colour);
    gradient.addColorStop(Math.min(to / picture.lengthCm, 1), colour);
  });
  return gradient;
}

/** Pale light along the hair at even distances, nothing between. */
function sheen(pen: Pen, shape: HairShape, shift: number, strength: number): CanvasGradient {
  const gradient = pen.createLinearGradient(0, 0, shape.width, 0);
  const step = shape.style.sheenCm * shape.pxPerCm;
  const half = (step * shape.style.sheenWidth) / TAU;
  for (let x = step * (0.3 + 0.06 * shift); x < shape.width + half; x += step) {
    for (const [d, a] of [
      [-1, 0],
      [-0.4, 0.5],
      [0, 1],
      [0.4, 0.5],
      [1, 0],
    ] as const) {
      const at = (x + d * half) / shape.width;
      if (at >= 0 && at <= 1) gradient.addColorStop(at, `rgb(255 250 240 / ${(a * strength).toFixed(3)})`);
    }
  }
  return gradient;
}

function path(
  pen: Pen,
  shape: HairShape,
  place: number,
  top: number,
  end: number,
  seed: number,
  row: number,
): void {
  const rest = top + shape.margin + place * (shape.height - 2 * shape.margin);
  const together = shape.style.together;
  const shift =
    1.5 * Math.sin(place * 6) + (1 - together) * rnd(seed, Math.floor(row / shape.perLock), 1) * TAU;
  const step = Math.max(3, shape.wavelength / 14);
  pen.beginPath();
  for (let x = 0; x < end + step; x += step) {
    const at = Math.min(x, end);
    const grown = Math.min(1, at / Math.min(shape.wavelength * 0.5, shape.pxPerCm * 1.6));
    const y = rest + shape.amplitude * grown * grown * Math.sin((at / shape.wavelength) * TAU + shift);
    if (x === 0) pen.moveTo(at, y);
    else pen.lineTo(at, y);
  }
}

function half(
  pen: Pen,
  request: PaintRequest,
  shape: HairShape,
  table: FibreTable,
  top: number,
  column: number,
) {
  const { seed, sheen: strength = 1 } = request;
  const bed = restPlaces(shape).slice(0, shape.locks * shape.perLock);
  pen.save();
  pen.beginPath();
  pen.rect(0, top, shape.width, shape.height);
  pen.clip();
  pen.lineCap = 'butt';
  bed.forEach((place, row) => {
    const r = rnd(seed, row, 21);
    path(pen, shape, place, top, shape.width - shape.fray * r * r, seed, row);
    pen.lineWidth = ((shape.height - 2 * shape.margin) / bed.length) * 1.9;
    pen.strokeStyle = along(pen, request, table, row, column);
    pen.stroke();
    if (strength === 0) return;
    pen.strokeStyle = sheen(pen, shape, rnd(seed, row, 23) - 0.5, 0.3 * strength * rnd(seed, row, 24));
    pen.stroke();
  });
  pen.restore();
}

/** Draws the hair of one strip with a pen scaled to CSS px. */
export function paintPlainly(pen: Pen, request: PaintRequest): void {
  const { layout, picture, seed, dpr } = request;
  const shape = hairShape(picture.hair, layout.hairWidth, layout.halfHeight, layout.pxPerCm, dpr);
  const table = fibreTable(
    picture,
    shape,
    seed,
    evenWeights(shape.locks * shape.perLock + shape.flyaways, picture.spans.length),
  );
  half(pen, request, shape, table, layout.todayTop, 0);
  if (layout.plannedTop !== null) half(pen, request, shape, table, layout.plannedTop, picture.spans.length);
}
