import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holdStride, parseNumber, snap, stepBy, type Steps } from './stepping';

const level: Steps = { min: 1, max: 10, step: 0.5 };
const grids = fc.constantFrom<Steps>(
  level,
  { min: 0, max: 100, step: 5 },
  { min: 0.1, max: 120, step: 0.1 },
  { min: 0, max: 400, step: 0.5 },
);
const onGrid = (value: number, s: Steps) =>
  Math.abs((value - s.min) / s.step - Math.round((value - s.min) / s.step)) < 1e-6;

describe('stepping', () => {
  it('always lands on the grid and inside the range', () => {
    fc.assert(
      fc.property(grids, fc.double(), fc.integer({ min: -50, max: 50 }), (s, value, count) => {
        for (const got of [snap(value, s), stepBy(snap(value, s), count, s)]) {
          expect(got).toBeGreaterThanOrEqual(s.min);
          expect(got).toBeLessThanOrEqual(s.max + 1e-9);
          expect(onGrid(got, s)).toBe(true);
        }
      }),
    );
  });

  it('up then down comes back unless the range ended', () => {
    fc.assert(
      fc.property(grids, fc.double({ min: 0, max: 1, noNaN: true }), (s, part) => {
        const start = snap(s.min + part * (s.max - s.min), s);
        const up = stepBy(start, 1, s);
        fc.pre(up > start);
        expect(stepBy(up, -1, s)).toBeCloseTo(start, 6);
      }),
    );
  });

  it('a step from between two lines goes to the line in that direction', () => {
    expect(stepBy(6.3, 1, level)).toBe(6.5);
    expect(stepBy(6.3, -1, level)).toBe(6);
  });

  it('keeps decimals tidy', () => {
    let cm = 0.1;
    for (let i = 0; i < 20; i++) cm = stepBy(cm, 1, { min: 0.1, max: 120, step: 0.1 });
    expect(cm).toBe(2.1);
  });

  it('holding never slows down', () => {
    for (let tick = 1; tick < 100; tick++) {
      expect(holdStride(tick)).toBeGreaterThanOrEqual(holdStride(tick - 1));
    }
  });

  it('reads points and commas, refuses the rest', () => {
    expect(parseNumber('12,5')).toBe(12.5);
    expect(parseNumber(' 12.5 ')).toBe(12.5);
    expect(parseNumber('−3')).toBe(-3);
    for (const bad of ['', '1e9', '1,2,3', 'NaN', '12 g', '.']) expect(parseNumber(bad)).toBeUndefined();
  });
});
