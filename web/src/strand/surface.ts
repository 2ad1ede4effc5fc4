import { paintPlainly } from './fallback';
import type { StripLayout } from './layout';
import { drawOverlay, type Ink } from './overlay';
import { sharedPainter, type HairPainter } from './painter';
import type { StrandPicture } from './types';

/** One strip to be shown: hair on one canvas, lines and letters on a second one above it. */
export interface StripJob {
  readonly picture: StrandPicture;
  readonly layout: StripLayout;
  readonly seed: number;
  readonly dpr: number;
  readonly ink: Ink;
}

function size(canvas: HTMLCanvasElement, layout: StripLayout, dpr: number): void {
  const width = Math.round(layout.width * dpr);
  const height = Math.round(layout.height * dpr);
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
}

/** Moves the drawn hair to the strip without reading pixels back. */
function show(painter: HairPainter, canvas: HTMLCanvasElement): void {
  if ('transferToImageBitmap' in painter.canvas) {
    const target = canvas.getContext('bitmaprenderer');
    if (target) {
      target.transferFromImageBitmap(painter.canvas.transferToImageBitmap());
      return;
    }
  }
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.clearRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(painter.canvas, 0, 0);
}

/** Draws the hair; returns which way it was drawn. */
export function drawHair(canvas: HTMLCanvasElement, job: StripJob): 'webgl' | 'plain' {
  const painter = sharedPainter();
  if (painter) {
    painter.paint(job);
    if (!painter.lost) {
      size(canvas, job.layout, job.dpr);
      show(painter, canvas);
      return 'webgl';
    }
  }
  size(canvas, job.layout, job.dpr);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.setTransform(job.dpr, 0, 0, job.dpr, 0, 0);
  pen.clearRect(0, 0, job.layout.width, job.layout.height);
  paintPlainly(pen, job);
  return 'plain';
}

export function drawSigns(canvas: HTMLCanvasElement, job: StripJob): void {
  size(canvas, job.layout, job.dpr);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.setTransform(job.dpr, 0, 0, job.dpr, 0, 0);
  pen.clearRect(0, 0, job.layout.width, job.layout.height);
  drawOverlay(pen, job.layout, job.ink);
}
