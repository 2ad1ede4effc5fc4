import { paintPlainly } from './fallback';
import { LETTER_RADIUS, type StripLayout } from './layout';
import { drawFans, drawOverlay, type Ink, type Pen } from './overlay';
import { HairPainter } from './painter';
import type { PaintRequest } from './request';

/** Which way hair was drawn. */
export type Drawn = 'webgl' | 'plain';

/** The hair of one strip to be drawn; plain data, so that a worker can take it. */
export interface HairJob extends PaintRequest {
  /** Draw with plain strokes even where WebGL2 is there. */
  readonly plain?: boolean;
}

export type Source = OffscreenCanvas | HTMLCanvasElement;

const watchers = new Set<() => void>();
let shared: HairPainter | null | undefined;

function makeShared(): HairPainter | null {
  const painter = HairPainter.create();
  for (const kind of ['webglcontextlost', 'webglcontextrestored']) {
    painter?.canvas.addEventListener(kind, () => watchers.forEach((tell) => tell()));
  }
  return painter;
}

/** Calls `tell` when this thread's painter is lost or comes back; returns the way to stop. */
export function watchPainter(tell: () => void): () => void {
  watchers.add(tell);
  return () => watchers.delete(tell);
}

function paintPlainCanvas(job: HairJob): Source {
  const width = Math.round(job.layout.width * job.dpr);
  const height = Math.round(job.layout.height * job.dpr);
  const canvas =
    typeof OffscreenCanvas === 'function'
      ? new OffscreenCanvas(width, height)
      : Object.assign(document.createElement('canvas'), { width, height });
  const pen = canvas.getContext('2d') as Pen | null;
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.setTransform(job.dpr, 0, 0, job.dpr, 0, 0);
  paintPlainly(pen, job);
  return canvas;
}

/** Draws the hair of one strip, with the shader where it can; `source` holds it until the next one is drawn. */
export function paintHair(job: HairJob): { source: Source; drawn: Drawn } {
  if (!job.plain) {
    if (shared === undefined) shared = makeShared();
    if (shared && !shared.lost) {
      shared.paint(job);
      if (!shared.lost) return { source: shared.canvas, drawn: 'webgl' };
    }
  }
  return { source: paintPlainCanvas(job), drawn: 'plain' };
}

function size(canvas: HTMLCanvasElement, layout: StripLayout, dpr: number): void {
  const width = Math.round(layout.width * dpr);
  const height = Math.round(layout.height * dpr);
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  canvas.style.width = `${layout.width}px`;
  canvas.style.height = `${layout.height}px`;
}

const bitmapRenderers = new WeakMap<HTMLCanvasElement, ImageBitmapRenderingContext>();

/** Asked for once: it takes longer than to hand a bitmap over. */
function bitmapsOn(canvas: HTMLCanvasElement): ImageBitmapRenderingContext | null {
  const made = bitmapRenderers.get(canvas) ?? canvas.getContext('bitmaprenderer');
  if (made) bitmapRenderers.set(canvas, made);
  return made;
}

/** Puts a finished drawing on the strip; where the browser can, by handing it over without a copy. */
export function showHair(canvas: HTMLCanvasElement, job: HairJob, picture: ImageBitmap | Source): void {
  size(canvas, job.layout, job.dpr);
  canvas.style.clipPath = job.layout.bareTo ? `inset(0 0 0 ${job.layout.bareTo}px)` : '';
  const bitmap = 'transferToImageBitmap' in picture ? picture.transferToImageBitmap() : picture;
  if (bitmap instanceof ImageBitmap) {
    bitmapsOn(canvas)?.transferFromImageBitmap(bitmap);
    return;
  }
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.clearRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(bitmap, 0, 0);
}

const signsOn = new WeakMap<HTMLCanvasElement, { readonly still: string; readonly fans: string }>();

/** Draws lines, letters, marks and fans where they have changed since the last time. */
export function drawSigns(canvas: HTMLCanvasElement, layout: StripLayout, dpr: number, ink: Ink): void {
  const { fans: blades, ...rest } = layout;
  const [still, fans] = [JSON.stringify([rest, dpr, ink]), JSON.stringify(blades)];
  const before = signsOn.get(canvas);
  if (before?.still === still && before.fans === fans) return;
  signsOn.set(canvas, { still, fans });
  size(canvas, layout, dpr);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.setTransform(dpr, 0, 0, dpr, 0, 0);
  const left = layout.fanX - 1;
  if (before?.still === still && layout.letters.every(({ x }) => x + LETTER_RADIUS + 1 < left)) {
    pen.clearRect(left, 0, layout.width, layout.height);
    drawFans(pen, layout);
  } else {
    pen.clearRect(0, 0, layout.width, layout.height);
    drawOverlay(pen, layout, ink);
  }
}
