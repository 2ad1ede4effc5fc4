import { describe, expect, it } from 'vitest';
import { checkPicture, hasPlan } from './check';
import { AREAS, KINDS, pop } from './demo-data';
import type { StrandPicture, StrandSpan } from './types';

const span = (change: Partial<StrandSpan> = {}): StrandSpan => ({
  id: 'a',
  label: 'a',
  fromCm: 0,
  toCm: 10,
  today: [pop('brown', 1, 'brown')],
  planned: [],
  ...change,
});
const picture = (spans: StrandSpan[], change: Partial<StrandPicture> = {}): StrandPicture => ({
  lengthCm: 10,
  hair: { texture: 'straight', diameterUm: 70 },
  spans,
  ...change,
});
const codes = (p: StrandPicture) => checkPicture(p).map((problem) => problem.code);

describe('checking a picture', () => {
  it('finds nothing wrong with the demonstration', () => {
    for (const { picture: p } of [...AREAS, ...KINDS]) expect(checkPicture(p)).toEqual([]);
  });

  it('says what is wrong and where', () => {
    expect(codes(picture([]))).toEqual(['no_spans']);
    expect(codes(picture([span()], { lengthCm: 0 }))).toEqual(['length_not_positive', 'spans_not_to_tip']);
    expect(codes(picture([span()], { lengthCm: NaN }))).toContain('length_not_positive');
    expect(codes(picture([span()], { hair: { texture: 'coily', diameterUm: 5 } }))).toEqual([
      'diameter_out_of_range',
    ]);
    expect(codes(picture([span({ today: [] })]))).toEqual(['no_populations']);
    expect(codes(picture([span({ toCm: 0 })]))).toContain('span_empty');
    expect(codes(picture([span({ fromCm: -1 })]))).toEqual(['spans_not_joined']);
    expect(codes(picture([span({ toCm: 8 })]))).toEqual(['spans_not_to_tip']);
    expect(codes(picture([span({ today: [pop('brown', 0.9, 'brown')] })]))).toEqual(['shares_not_one']);
    expect(codes(picture([span({ today: [pop('a', 1.5, 'brown'), pop('b', -0.5, 'brown')] })]))).toEqual([
      'shares_not_one',
    ]);
    expect(
      codes(picture([span({ planned: [{ name: 'x', share: 1, srgb: [1.2, 0, 0], outOfGamut: true }] })])),
    ).toEqual(['colour_out_of_range']);
    expect(codes(picture([span({ today: [pop('x', 1, 'brown', { widthMm: 4, everyMm: 3 })] })]))).toEqual([
      'packets_impossible',
    ]);
    expect(checkPicture(picture([span({ id: 'mids', today: [] })]))[0]?.span).toBe('mids');
  });

  it('knows whether anything is planned', () => {
    expect(hasPlan(picture([span()]))).toBe(false);
    expect(hasPlan(picture([span({ planned: [pop('x', 1, 'brown')] })]))).toBe(true);
  });
});
