import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expectedMean } from './colour';
import { KINDS, pop } from './demo-data';
import { assign, fibreTable, OWN_COLUMNS, restPlaces } from './fibres';
import { hairPaths } from './paths';
import { hairShape } from './style';
import { countWeights, evenWeights } from './weights';

const shape = hairShape({ texture: 'straight', diameterUm: 70 }, 400, 46, 20, 1);
const places = restPlaces(shape);
const even = new Float32Array(places.length).fill(1);
const share = (owner: number[], p: number) => owner.filter((o) => o === p).length / owner.length;

describe('which fibre belongs to which population', () => {
  it('gives each population its share to within one fibre', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.98, noNaN: true }), fc.nat(1000), (white, seed) => {
        const owner = assign(
          [pop('w', white, 'white'), pop('b', 1 - white, 'brown')],
          places,
          23,
          seed,
          even,
        );
        expect(Math.abs(share(owner, 0) - white)).toBeLessThanOrEqual(0.51 / places.length + 1e-9);
      }),
    );
  });

  it('keeps white fibres white where there are more of them', () => {
    const few = assign([pop('w', 0.1, 'white'), pop('b', 0.9, 'brown')], places, 23, 5, even);
    const many = assign([pop('w', 0.4, 'white'), pop('b', 0.6, 'brown')], places, 23, 5, even);
    few.forEach((p, i) => p === 0 && expect(many[i]).toBe(0));
  });

  it('puts packets into stripes of their width', () => {
    const list = [pop('l', 3 / 9, 'blonde', { widthMm: 3, everyMm: 9 }), pop('b', 6 / 9, 'brown')];
    const owner = assign(list, places, 27, 5, even);
    // Three packets in 27 mm, the middle one in the middle.
    const inMiddle = places.map((place) => Math.abs(place * 27 - 13.5) < 1.2);
    inMiddle.forEach((inside, i) => inside && expect(owner[i]).toBe(0));
    const between = places.map((place) => Math.abs(Math.abs(place * 27 - 13.5) - 4.5) < 1.5);
    between.forEach((inside, i) => inside && expect(owner[i]).toBe(1));
  });

  it('puts all fibres of a group into the same stripes, each by its share', () => {
    const own = { widthMm: 3, everyMm: 9, group: { name: 'lights', nth: 0, bed: [0.5, 0.5, 0.5] as const } };
    const list = [pop('b', 6 / 9, 'brown'), pop('l', 2 / 9, 'blonde', own), pop('w', 1 / 9, 'white', own)];
    const owner = assign(list, places, 27, 5, even);
    const inMiddle = places.map((place) => Math.abs(place * 27 - 13.5) < 1.2);
    inMiddle.forEach((inside, i) => inside && expect(owner[i]).toBeGreaterThan(0));
    expect(share(owner, 1)).toBeCloseTo(2 / 9, 1);
    expect(share(owner, 2)).toBeCloseTo(1 / 9, 1);
    // Both kinds lie in the middle stripe.
    expect(new Set(owner.filter((_, i) => inMiddle[i]))).toEqual(new Set([1, 2]));
  });

  it('counts what one sees, not how many fibres there are', () => {
    const seen = Float32Array.from(places, (_, i) => (i % 2 === 0 ? 3 : 1));
    const owner = assign([pop('w', 0.5, 'white'), pop('b', 0.5, 'brown')], places, 23, 2, seen);
    const weight = (p: number) => owner.reduce((sum, o, i) => sum + (o === p ? (seen[i] ?? 0) : 0), 0);
    expect(Math.abs(weight(0) - weight(1))).toBeLessThanOrEqual(3);
  });
});

describe('the table of fibres', () => {
  const picture = KINDS[2]?.picture;
  if (!picture) throw new Error('no demonstration');
  const curly = hairShape(picture.hair, 400, 46, 14, 1);
  const rows = restPlaces(curly).length;

  it('has the exact mean of the mixture in every span and half', () => {
    const table = fibreTable(picture, curly, 3, evenWeights(rows, picture.spans.length));
    picture.spans.forEach((span, s) => {
      for (const [h, list] of [span.today, span.planned].entries()) {
        const column = OWN_COLUMNS + h * picture.spans.length + s;
        expectedMean(list).forEach((wanted, k) => {
          let sum = 0;
          for (let row = 0; row < rows; row++) sum += table.data[(row * table.columns + column) * 4 + k] ?? 0;
          expect(sum / rows).toBeCloseTo(wanted, 5);
        });
      }
    });
  });

  it('is the same for the same seed', () => {
    const weights = evenWeights(rows, picture.spans.length);
    expect(fibreTable(picture, curly, 3, weights).data).toEqual(fibreTable(picture, curly, 3, weights).data);
    expect(fibreTable(picture, curly, 4, weights).data).not.toEqual(
      fibreTable(picture, curly, 3, weights).data,
    );
  });
});

describe('paths and weights', () => {
  it('keeps every lock inside its half', () => {
    for (const texture of ['straight', 'wavy', 'curly', 'coily'] as const) {
      const s = hairShape({ texture, diameterUm: 70 }, 500, 46, 18, 1);
      const { data, columns } = hairPaths(s, 11);
      for (let i = 0; i < s.locks * columns; i++) {
        expect(data[i * 4]).toBeGreaterThan(-2);
        expect(data[i * 4]).toBeLessThan(48);
      }
    }
  });

  it('counts points per fibre and span', () => {
    // Two columns, two rows of points: fibre 0 | fibre 1 / fibre 0 half as light | nothing.
    const grid = {
      columns: 2,
      fibre: new Uint16Array([1, 2, 1, 0]),
      light: new Uint16Array([100, 100, 50, 0]),
    };
    const { seen, light } = countWeights(grid, 2, [1, 2], 100);
    expect([...seen]).toEqual([2, 0, 0, 1]);
    expect(light[0]).toBeCloseTo(1.5, 5);
  });
});
