import { checkPicture } from './check';
import { paintPlainly } from './fallback';
import { layoutStrip, sharedScale, type StripLayout } from './layout';
import { drawOverlay, drawRuler, type Ink } from './overlay';
import { HairPainter } from './painter';
import { seedFrom } from './random';
import type { StrandPicture, StrandProblem } from './types';

/** One strip of a still, with its title when it has one. */
export interface StillStrip {
  /** Seeds the hair as on the screen: the same id shows the same fibres. */
  readonly id: string;
  readonly title?: string;
  readonly picture: StrandPicture;
}

export interface StillOptions {
  /** Width in CSS px; the height follows. */
  readonly width: number;
  /** Device px per CSS px; 2 for the record, 3 or more for print. */
  readonly scale?: number;
  /** Colour around the hair. */
  readonly ground?: string;
  readonly text?: string;
  readonly font?: string;
  /** Unit at the ruler's zero; without it there is no ruler. */
  readonly unit?: string;
}

/** Thrown for a picture that cannot be drawn; `problems` say what and where. */
export class StrandError extends Error {
  constructor(readonly problems: readonly StrandProblem[]) {
    super(`strand: ${problems.map((p) => p.code).join(', ')}`);
  }
}

const PAD = 12;
const TITLE = 20;
const RULER = 26;
const PAUSE_MS = 20;

function makeCanvas(width: number, height: number): OffscreenCanvas | HTMLCanvasElement {
  if (typeof OffscreenCanvas === 'function') return new OffscreenCanvas(width, height);
  return Object.assign(document.createElement('canvas'), { width, height });
}

function toPng(canvas: OffscreenCanvas | HTMLCanvasElement): Promise<Blob> {
  if ('convertToBlob' in canvas) return canvas.convertToBlob({ type: 'image/png' });
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('strand: no PNG'))), 'image/png'),
  );
}

type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

function drawStrip(
  pen: Pen,
  painter: HairPainter | null,
  strip: StillStrip,
  layout: StripLayout,
  y: number,
  dpr: number,
  ink: Ink,
): void {
  const request = { picture: strip.picture, layout, dpr, seed: seedFrom(strip.id) };
  if (painter) painter.paint(request);
  pen.setTransform(dpr, 0, 0, dpr, PAD * dpr, y * dpr);
  pen.save();
  pen.beginPath();
  pen.rect(layout.bareTo, 0, layout.width, layout.height);
  pen.clip();
  if (painter && !painter.lost) {
    const { width, height } = painter.canvas;
    pen.drawImage(painter.canvas, 0, 0, width / dpr, height / dpr);
  } else paintPlainly(pen, request);
  pen.restore();
  drawOverlay(pen, layout, ink);
}

/**
 * A PNG of one or several strips to one scale, from the same shader as the screen.
 * Throws StrandError when a picture cannot be drawn.
 */
export async function renderStills(strips: readonly StillStrip[], options: StillOptions): Promise<Blob> {
  const problems = strips.flatMap((strip) => checkPicture(strip.picture));
  if (problems.length > 0) throw new StrandError(problems);
  const {
    width,
    scale = 2,
    ground = 'rgb(160 160 160)',
    text = 'rgb(13 13 13)',
    font = 'sans-serif',
    unit,
  } = options;
  const inner = width - 2 * PAD;
  const pxPerCm = sharedScale(
    strips.map((s) => s.picture),
    inner,
  );
  const layouts = strips.map((s) => layoutStrip(s.picture, { width: inner, pxPerCm }));
  const tops: number[] = [];
  let y = PAD;
  strips.forEach((strip, i) => {
    if (strip.title) y += TITLE;
    tops.push(y);
    y += (layouts[i] as StripLayout).height + 8;
  });
  const height = y + (unit === undefined ? 0 : RULER) + PAD - 8;
  const canvas = makeCanvas(Math.round(width * scale), Math.round(height * scale));
  const pen = canvas.getContext('2d') as Pen | null;
  if (!pen) throw new Error('strand: no 2-D canvas');
  pen.fillStyle = ground;
  pen.fillRect(0, 0, canvas.width, canvas.height);
  const ink: Ink = { text, font };
  const painter = HairPainter.create(); // of its own: the page's painter keeps its size
  for (const [i, strip] of strips.entries()) {
    const top = tops[i] as number;
    drawStrip(pen, painter, strip, layouts[i] as StripLayout, top, scale, ink);
    // A slow graphics driver draws the page between two strips.
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    if (!strip.title) continue;
    pen.fillStyle = text;
    pen.font = `650 14px ${font}`;
    pen.textAlign = 'left';
    pen.textBaseline = 'alphabetic';
    pen.fillText(strip.title, 0, -6);
  }
  if (unit !== undefined) {
    pen.setTransform(scale, 0, 0, scale, PAD * scale, 0);
    drawRuler(pen, Math.max(...strips.map((s) => s.picture.lengthCm)), pxPerCm, y, unit, ink);
  }
  painter?.release();
  return toPng(canvas);
}

/** A PNG of one strip. */
export const renderStill = (picture: StrandPicture, options: StillOptions & { id?: string }): Promise<Blob> =>
  renderStills([{ id: options.id ?? 'strand', picture }], options);
