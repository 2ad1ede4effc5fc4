import { describe, expect, it } from 'vitest';
import { labOfScreen, meanColour } from './hint';

describe('colour of a picture', () => {
  // IEC 61966-2-1 and CIE 15: white and mid grey by definition; red is the published L*a*b* of the sRGB primary (D65).
  it('gives CIELAB of sRGB', () => {
    const near = (got: { l: number; a: number; b: number }, want: number[]) =>
      [got.l, got.a, got.b].forEach((v, i) => expect(v).toBeCloseTo(want[i]!, 1));
    near(labOfScreen([1, 1, 1]), [100, 0, 0]);
    near(labOfScreen([0, 0, 0]), [0, 0, 0]);
    near(labOfScreen([1, 0, 0]), [53.2, 80.1, 67.2]);
  });

  it('averages what is opaque', () => {
    expect(meanColour(new Uint8ClampedArray([255, 0, 0, 255, 0, 0, 255, 255, 9, 9, 9, 0]))).toEqual([
      0.5, 0, 0.5,
    ]);
    expect(meanColour(new Uint8ClampedArray([9, 9, 9, 0]))).toBeUndefined();
  });
});
