import type { Lab } from '../../api/types';

/** Mean of the encoded sRGB pixels of `data` (RGBA bytes), each channel 0…1; undefined without opaque pixels. */
export function meanColour(data: Uint8ClampedArray): [number, number, number] | undefined {
  let count = 0;
  const sum: [number, number, number] = [0, 0, 0];
  for (let i = 0; i + 3 < data.length; i += 4) {
    if (data[i + 3]! < 128) continue;
    count++;
    for (let c = 0; c < 3; c++) sum[c]! += data[i + c]! / 255;
  }
  return count ? (sum.map((s) => s / count) as [number, number, number]) : undefined;
}

const linear = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);

/**
 * CIELAB of an encoded sRGB colour (IEC 61966-2-1, white D65): what a screen shows, not what hair is.
 * Only a hint: camera and light have already changed it.
 */
export function labOfScreen([r, g, b]: readonly [number, number, number]): Lab {
  const [lr, lg, lb] = [linear(r), linear(g), linear(b)];
  const x = (0.4124564 * lr + 0.3575761 * lg + 0.1804375 * lb) / 0.95047;
  const y = 0.2126729 * lr + 0.7151522 * lg + 0.072175 * lb;
  const z = (0.0193339 * lr + 0.119192 * lg + 0.9503041 * lb) / 1.08883;
  const f = (v: number) => (v > 216 / 24389 ? Math.cbrt(v) : ((24389 / 27) * v + 16) / 116);
  return { l: 116 * f(y) - 16, a: 500 * (f(x) - f(y)), b: 200 * (f(y) - f(z)) };
}
