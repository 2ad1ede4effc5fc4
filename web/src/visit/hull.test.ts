import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../api/types';
import { frameOf, levelAsLight, outlineOf, placeIn } from './hull';

const at = (a: number, b: number, l = 50): Lab => ({ l, a, b });
const colour = fc.record({
  l: fc.integer({ min: 0, max: 100 }),
  a: fc.integer({ min: -60, max: 60 }),
  b: fc.integer({ min: -60, max: 60 }),
});
const turn = (p: Lab, q: Lab, r: Lab) => (q.a - p.a) * (r.b - p.b) - (q.b - p.b) * (r.a - p.a);

describe('the outline from above', () => {
  it('leaves out what lies inside, on an edge, or twice', () => {
    const square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];
    expect(outlineOf([at(5, 5), ...square.toReversed(), at(5, 0), at(10, 10)])).toEqual(square);
    expect(outlineOf([at(1, 2)])).toEqual([at(1, 2)]);
    expect(outlineOf([at(0, 0), at(2, 2), at(1, 1)])).toEqual([at(0, 0), at(2, 2)]);
  });

  it('is convex and holds every colour', () => {
    fc.assert(
      fc.property(fc.array(colour, { minLength: 3, maxLength: 26 }), (colours) => {
        const outline = outlineOf(colours);
        if (outline.length < 3) return;
        outline.forEach((from, i) => {
          const to = outline[(i + 1) % outline.length]!;
          expect(turn(from, to, outline[(i + 2) % outline.length]!)).toBeGreaterThan(0);
          for (const one of colours) expect(turn(from, to, one)).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });
});

describe('the frame', () => {
  it('is a square with grey in it, red to the right, yellow and light at the top', () => {
    const frame = frameOf([at(-10, 0, 20), at(30, 20, 60)])!;
    expect(frame).toEqual({ a: -10, b: -10, side: 40, dark: 20, light: 60 });
    expect(placeIn(frame, at(30, 30, 60))).toEqual({ x: 1, y: 0, up: 0 });
    expect(placeIn(frame, at(-10, -10, 20))).toEqual({ x: 0, y: 1, up: 1 });
    expect(placeIn(frame, at(0, 0, 40))).toEqual({ x: 0.25, y: 0.75, up: 0.5 });
    expect(frameOf([])).toBeUndefined();
  });

  it('keeps a colour from outside at its edge', () => {
    const frame = frameOf([at(-10, 0, 20), at(30, 20, 60)])!;
    expect(placeIn(frame, at(90, -90, 99))).toEqual({ x: 1, y: 1, up: 0 });
  });
});

it('a lightness is told as the level that is as light', () => {
  const scale = [10, 20, 40];
  expect([5, 10, 15, 30, 40, 99].map((l) => levelAsLight(l, scale))).toEqual([1, 1, 1.5, 2.5, 3, 3]);
});
