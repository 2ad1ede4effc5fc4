import { cssColour, encode, type Linear } from './colour';
import { fibreTable, OWN_COLUMNS, restPlaces, type FibreTable } from './fibres';
import type { Pen } from './overlay';
import { hairPaths, type Paths } from './paths';
import { sheenStart, type PaintRequest } from './request';
import { hairShape, type HairShape } from './style';
import { evenWeights } from './weights';

/** The same hair with plain canvas strokes, for browsers without WebGL2: same fibres, colours and paths, simpler light. */

interface Scene {
  readonly pen: Pen;
  readonly request: PaintRequest;
  readonly shape: HairShape;
  readonly table: FibreTable;
  readonly paths: Paths;
}

const TAU = Math.PI * 2;
/** Strokes lie a little over one another, so that no ground shows between fibres. */
const OVERLAP = 1.5;

const value = (table: FibreTable, row: number, column: number, k: number): number =>
  table.data[(row * table.columns + column) * 4 + k] ?? 0;

function spanColour(table: FibreTable, row: number, column: number): string {
  const c = [0, 1, 2].map((k) => encode(value(table, row, OWN_COLUMNS + column, k))) as Linear;
  return cssColour(c);
}

/** Colours along one fibre: flat inside each span, a short change at each join. */
function along({ pen, request, table }: Scene, row: number, column: number): CanvasGradient {
  const { layout, picture } = request;
  const gradient = pen.createLinearGradient(0, 0, layout.hairWidth, 0);
  const last = picture.spans.length - 1;
  const stop = (cm: number, colour: string) =>
    gradient.addColorStop(Math.min(1, Math.max(0, cm / picture.lengthCm)), colour);
  const shift = value(table, row, 0, 1) / layout.pxPerCm;
  picture.spans.forEach((span, s) => {
    const colour = spanColour(table, row, column + s);
    const soft = Math.min(0.12, (span.toCm - span.fromCm) / 3);
    stop(s === 0 ? 0 : span.fromCm - shift + soft, colour);
    stop(s === last ? picture.lengthCm : span.toCm - shift - soft, colour);
  });
  return gradient;
}

/** Pale light along the hair where the shader has its first lobe, nothing between. */
function sheen(
  { pen, request, shape, table, paths }: Scene,
  row: number,
  lock: number,
  strength: number,
): CanvasGradient {
  const gradient = pen.createLinearGradient(0, 0, shape.width, 0);
  const step = shape.style.sheenCm * shape.pxPerCm;
  const half = (step * shape.style.sheenWidth) / TAU;
  const follows = shape.style.sheenCm === shape.style.wavelengthCm;
  const start = follows ? -(paths.data[lock * paths.columns * 4 + 3] ?? 0) : sheenStart(request.seed);
  const first = (((start / TAU) % 1) + 1) % 1;
  for (let x = (first - 1 + 0.14 * value(table, row, 1, 0)) * step; x < shape.width + half; x += step) {
    for (const [d, a] of [
      [-1, 0],
      [-0.45, 0.5],
      [0, 1],
      [0.45, 0.5],
      [1, 0],
    ] as const) {
      const at = (x + d * half) / shape.width;
      if (at >= 0 && at <= 1) gradient.addColorStop(at, `rgb(255 250 240 / ${(a * strength).toFixed(3)})`);
    }
  }
  return gradient;
}

/** The line of one fibre at `across` (-1..1) of its lock. */
function trace({ pen, paths }: Scene, lock: number, across: number, top: number, end: number): void {
  pen.beginPath();
  for (let x = 0; x < end + 2; x += 2) {
    const i = Math.min(Math.floor(Math.min(x, end)), paths.columns - 1);
    const at = (lock * paths.columns + i) * 4;
    const y = top + (paths.data[at] ?? 0) + across / (paths.data[at + 1] || 1);
    if (x === 0) pen.moveTo(0, y);
    else pen.lineTo(Math.min(x, end), y);
  }
}

function drawLock(scene: Scene, lock: number, top: number, column: number): void {
  const { pen, request, shape, table } = scene;
  const { sheen: strength = 1 } = request;
  for (let i = 0; i < shape.perLock; i++) {
    const row = lock * shape.perLock + i;
    trace(scene, lock, ((i + 0.5) / shape.perLock) * 2 - 1, top, value(table, row, 0, 0));
    pen.lineWidth = ((2 * shape.halfLock) / shape.perLock) * OVERLAP;
    pen.strokeStyle = along(scene, row, column);
    pen.stroke();
    if (strength === 0) continue;
    pen.strokeStyle = sheen(scene, row, lock, 0.42 * strength * value(table, row, 1, 1) ** 2);
    pen.stroke();
  }
}

function drawFlyaway(scene: Scene, nth: number, top: number, column: number): void {
  const { pen, shape, table } = scene;
  const row = shape.locks * shape.perLock + nth;
  trace(scene, shape.locks + nth, 0, top, value(table, row, 0, 0));
  pen.lineWidth = shape.fibrePx;
  pen.strokeStyle = along(scene, row, column);
  pen.stroke();
}

function drawHalf(scene: Scene, top: number, column: number): void {
  const { pen, shape, paths } = scene;
  pen.save();
  pen.beginPath();
  pen.rect(0, top, shape.width, shape.height);
  pen.clip();
  pen.lineCap = 'butt';
  pen.lineJoin = 'round';
  const height = (lock: number) => paths.data[lock * paths.columns * 4 + 2] ?? 0;
  const order = Array.from({ length: shape.locks }, (_, l) => l).sort((a, b) => height(a) - height(b));
  for (const lock of order) drawLock(scene, lock, top, column);
  for (let f = 0; f < shape.flyaways; f++) drawFlyaway(scene, f, top, column);
  pen.restore();
}

/** Draws the hair of one strip with a pen scaled to CSS px. */
export function paintPlainly(pen: Pen, request: PaintRequest): void {
  const { layout, picture, seed, dpr } = request;
  const shape = hairShape(picture.hair, layout.hairWidth, layout.halfHeight, layout.pxPerCm, dpr);
  const weights = evenWeights(restPlaces(shape).length, picture.spans.length);
  const table = fibreTable(picture, shape, seed, weights);
  const scene: Scene = { pen, request, shape, table, paths: hairPaths(shape, seed) };
  drawHalf(scene, layout.todayTop, 0);
  if (layout.plannedTop !== null) drawHalf(scene, layout.plannedTop, picture.spans.length);
}
