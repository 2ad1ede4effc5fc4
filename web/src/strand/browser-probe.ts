import { decode, type Linear } from './colour';
import { paintPlainly } from './fallback';
import { layoutStrip } from './layout';
import { HairPainter } from './painter';
import { renderStill, type StillOptions } from './still';
import type { Half, StrandPicture } from './types';

/** Support of the browser tests: draws in the page and reads pixels back. No screen imports it. */

export interface Ask {
  readonly picture: StrandPicture;
  readonly seed: number;
  readonly dpr: number;
  readonly pxPerCm: number;
  readonly sheen: number;
  readonly plain?: boolean;
  /** Part of the length to read, cm, and the half. */
  readonly fromCm: number;
  readonly toCm: number;
  readonly half: Half;
}

export interface Read {
  /** Linear mean of the fully covered pixels, and how many there are. */
  readonly mean: Linear;
  readonly points: number;
  /** Mean and share of those that the highlight leaves alone. */
  readonly calm: Linear;
  readonly calmShare: number;
}

let painter: HairPainter | null = null;

function draw(ask: Ask, sheen: number): { data: ImageData; top: number; height: number } {
  const { picture, pxPerCm, dpr, seed } = ask;
  const layout = layoutStrip(picture, { width: picture.lengthCm * pxPerCm + 40, pxPerCm });
  const canvas = new OffscreenCanvas(Math.round(layout.width * dpr), Math.round(layout.height * dpr));
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  if (!pen) throw new Error('no 2-D canvas');
  const request = { picture, layout, seed, dpr, sheen };
  if (ask.plain) {
    pen.scale(dpr, dpr);
    paintPlainly(pen, request);
  } else {
    painter ??= HairPainter.create();
    if (!painter) throw new Error('no WebGL2');
    painter.paint(request);
    pen.drawImage(painter.canvas, 0, 0);
  }
  const top = ask.half === 'today' ? layout.todayTop : (layout.plannedTop ?? NaN);
  return { data: pen.getImageData(0, 0, canvas.width, canvas.height), top, height: layout.halfHeight };
}

/** Draws one strip and reads the fully covered pixels of one half between two places. */
export function readHair(ask: Ask): Read {
  const { data: image, top, height } = draw(ask, ask.sheen);
  const bare = ask.sheen > 0 ? draw(ask, 0).data : image;
  const [mean, calm]: [Linear, Linear] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  let [points, calmPoints] = [0, 0];
  for (let y = Math.ceil(top * ask.dpr); y < Math.floor((top + height) * ask.dpr); y++) {
    for (let x = Math.ceil(ask.fromCm * ask.pxPerCm * ask.dpr); x < ask.toCm * ask.pxPerCm * ask.dpr; x++) {
      const i = (y * image.width + x) * 4;
      if ((image.data[i + 3] ?? 0) < 255) continue;
      const same = [0, 1, 2].every((k) => image.data[i + k] === bare.data[i + k]);
      points++;
      if (same) calmPoints++;
      for (const k of [0, 1, 2] as const) {
        const v = decode((image.data[i + k] ?? 0) / 255);
        mean[k] += v;
        if (same) calm[k] += v;
      }
    }
  }
  return {
    points,
    mean: mean.map((v) => v / points) as Linear,
    calm: calm.map((v) => v / calmPoints) as Linear,
    calmShare: calmPoints / points,
  };
}

/** Makes a still and reads its size and two of its pixels. */
export async function readStill(
  picture: StrandPicture,
  options: StillOptions,
  at: readonly [number, number],
) {
  const blob = await renderStill(picture, options);
  const image = await createImageBitmap(blob);
  const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
  if (!pen) throw new Error('no 2-D canvas');
  pen.drawImage(image, 0, 0);
  const pixel = (x: number, y: number) => [...pen.getImageData(x, y, 1, 1).data];
  return { type: blob.type, width: image.width, corner: pixel(2, 2), hair: pixel(at[0], at[1]) };
}
