import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bedBetweenPackets, decode, drawnColours, encode, expectedMean, lightness, mixture } from './colour';
import { pop } from './demo-data';

describe('colour', () => {
  it('encodes what it decodes (IEC 61966-2-1)', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (v) => Math.abs(encode(decode(v)) - v) < 1e-6),
    );
    // Half of the light is 188 of 255 in sRGB.
    expect(Math.round(encode(0.5) * 255)).toBe(188);
  });

  it('gives CIE lightness: 0 for black, 100 for white, 50 for middle grey 119', () => {
    expect(lightness([0, 0, 0])).toBeCloseTo(0, 6);
    expect(lightness([1, 1, 1])).toBeCloseTo(100, 2);
    expect(lightness([119 / 255, 119 / 255, 119 / 255])).toBeCloseTo(50, 0);
  });

  it('mixes light by share', () => {
    expect(
      mixture([
        { share: 1, linear: [0, 0.2, 1] },
        { share: 3, linear: [0.4, 0.2, 0] },
      ]),
    ).toEqual([expect.closeTo(0.3), expect.closeTo(0.2), expect.closeTo(0.25)]);
  });

  it('gives the mixed bed the colour asked for and keeps its darkest fibre', () => {
    const list = [pop('white', 0.5, 'white'), pop('black', 0.5, 'black')];
    const bed = [0.35, 0.33, 0.31] as const;
    const plain = drawnColours(list, undefined);
    const drawn = drawnColours(list, bed);
    expect(drawn[1]).toEqual(plain[1]);
    expect(drawn[0]?.[1]).toBeLessThan(plain[0]?.[1] ?? 0);
    expectedMean(list, bed).forEach((v, k) => expect(v).toBeCloseTo(decode(bed[k] ?? 0), 9));
  });

  it('leaves packets out of the mixed bed', () => {
    const list = [pop('lights', 0.4, 'blonde', { widthMm: 3, everyMm: 9 }), pop('brown', 0.6, 'brown')];
    const drawn = drawnColours(list, [0.2, 0.15, 0.1]);
    expect(drawn[0]).toEqual(drawnColours(list, undefined)[0]);
    drawn[1]?.forEach((v, k) => expect(v).toBeCloseTo(decode([0.2, 0.15, 0.1][k] ?? 0), 9));
  });

  it('finds the bed between packets from the colour of the whole', () => {
    const brown = [pop('brown', 0.6, 'brown')];
    expect(bedBetweenPackets(brown, [0.3, 0.2, 0.1])).toEqual([0.3, 0.2, 0.1]);
    const mixed = [pop('white', 0.2, 'white'), pop('black', 0.4, 'black')];
    const list = [pop('lights', 0.4, 'blonde', { widthMm: 3, everyMm: 7.5 }), ...mixed];
    const whole = expectedMean(list).map(encode) as [number, number, number];
    const bed = bedBetweenPackets(list, whole);
    expectedMean(list, bed).forEach((v, k) => expect(v).toBeCloseTo(decode(whole[k] ?? 0), 6));
    // A whole that no such bed explains stays within what its fibres can show.
    expect(bedBetweenPackets(list, [0, 0, 0]).map((v) => v > 0)).toEqual([true, true, true]);
  });
});
