import { paintPlainly } from './fallback';
import type { StripLayout } from './layout';
import { drawOverlay, type Ink, type Pen } from './overlay';
import { sharedPainter } from './painter';
import type { StrandPicture } from './types';

/** One strip to be shown: hair on one canvas, lines and letters on a second one above it. */
export interface StripJob {
  readonly picture: StrandPicture;
  readonly layout: StripLayout;
  readonly seed: number;
  readonly dpr: number;
  readonly ink: Ink;
  /** Draw with plain strokes even where WebGL2 is there. */
  readonly plain?: boolean;
}

function size(canvas: HTMLCanvasElement, layout: StripLayout, dpr: number): void {
  const width = Math.round(layout.width * dpr);
  const height = Math.round(layout.height * dpr);
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
}

/** Puts a finished drawing on the strip; where the browser can, by handing it over without a copy. */
function show(source: OffscreenCanvas | HTMLCanvasElement, canvas: HTMLCanvasElement): void {
  if ('transferToImageBitmap' in source) {
    const target = canvas.getContext('bitmaprenderer');
    if (target) {
      target.transferFromImageBitmap(source.transferToImageBitmap());
      return;
    }
  }
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.clearRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(source, 0, 0);
}

function paintPlainCanvas(job: StripJob): OffscreenCanvas | HTMLCanvasElement {
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

/** Draws the hair; returns which way it was drawn. */
export function drawHair(canvas: HTMLCanvasElement, job: StripJob): 'webgl' | 'plain' {
  size(canvas, job.layout, job.dpr);
  const painter = job.plain ? null : sharedPainter();
  if (painter) {
    painter.paint(job);
    if (!painter.lost) {
      show(painter.canvas, canvas);
      return 'webgl';
    }
  }
  show(paintPlainCanvas(job), canvas);
  return 'plain';
}

const signsOn = new WeakMap<HTMLCanvasElement, string>();

/** Draws lines, letters, marks and fans where they have changed since the last time. */
export function drawSigns(canvas: HTMLCanvasElement, job: StripJob): void {
  const { fans, ...rest } = job.layout;
  const key = JSON.stringify([rest, fans.map(({ span, y }) => [span.fan, y]), job.dpr, job.ink]);
  if (signsOn.get(canvas) === key) return;
  signsOn.set(canvas, key);
  size(canvas, job.layout, job.dpr);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.setTransform(job.dpr, 0, 0, job.dpr, 0, 0);
  pen.clearRect(0, 0, job.layout.width, job.layout.height);
  drawOverlay(pen, job.layout, job.ink);
}
