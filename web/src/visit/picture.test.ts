import { describe, expect, it } from 'vitest';
import type { ColourView, Rgb, UnderLights } from '../api/types';
import { expectedMean, toLinear } from '../strand/colour';
import { newHead, zoneId } from './head';
import { screen, strandPicture, type ZonePicture } from './picture';
import { readSpan, writeSpan } from './reading';

const rgb = (hex: string): Rgb => ({ hex, out_of_gamut: false });
const lights = (day: string, lamp = day): UnderLights => ({
  daylight: rgb(day),
  led: rgb(day),
  lamp: rgb(lamp),
  fluorescent: rgb(day),
});
const spread = { p10: 4, p50: 5, p90: 6 };
const lab = { l: 30, a: 5, b: 8 };

function seen(whole: UnderLights, fibres: [string, number, string][]): ColourView {
  return {
    lab,
    srgb: whole,
    level: 5,
    tone: 'natural',
    warmth: 0,
    level_spread: spread,
    contrast_levels: 0,
    porosity: 1,
    condition_left: 1,
    fan: [],
    reflectance: [],
    populations: fibres.map(([name, share, hex]) => ({
      name,
      kind: name === 'white' ? 'white' : 'pigmented',
      share,
      lab,
      srgb: lights(hex),
      level: 5,
      tone: 'natural',
      warmth: 0,
      level_spread: spread,
      reflectance: [],
    })),
  };
}

const head = newHead();
const area = head.areas[0]!;
const view = seen(lights('#6a5a4c', '#7a5a3c'), [
  ['pigmented', 0.6, '#3a2c22'],
  ['white', 0.4, '#d8d2c4'],
]);
const zones = new Map<string, ZonePicture>(area.spans.map((s) => [zoneId(area, s), { today: view }]));

describe('the strand of an area', () => {
  it('has the colour in which its fibres are seen together, not their mean', () => {
    const span = strandPicture(head, area, zones, 'daylight')!.spans[0]!;
    expect(span.mixedBed?.today).toEqual(screen('#6a5a4c'));
    const drawn = expectedMean(span.today, span.mixedBed?.today);
    toLinear(screen('#6a5a4c')).forEach((v, k) => expect(drawn[k]).toBeCloseTo(v, 6));
    expect(expectedMean(span.today)[1]).toBeGreaterThan(drawn[1]);
  });

  it('changes with the light', () => {
    const span = strandPicture(head, area, zones, 'evening')!.spans[0]!;
    expect(span.mixedBed?.today).toEqual(screen('#7a5a3c'));
  });

  it('shows packets at their width, so far apart that they carry their share', () => {
    const strands = [
      {
        name: 'old highlights',
        share: 0.25,
        level: 8,
        tone: 'gold',
        origin: 'lightened',
        packet_mm: 4,
      } as const,
    ];
    const spans = area.spans.map((s) => writeSpan(s, { ...readSpan(s), white: 0, strands: [...strands] }));
    expect(readSpan(spans[0]!).strands[0]?.packet_mm).toBe(4);
    const view = seen(lights('#7c6650'), [
      ['pigmented', 0.75, '#3a2c22'],
      ['old highlights', 0.25, '#d0b080'],
    ]);
    const map = new Map(area.spans.map((s) => [zoneId(area, s), { today: view }]));
    const [span] = strandPicture(head, { ...area, spans }, map, 'daylight')!.spans;
    expect(span!.today[1]?.packets).toEqual({ widthMm: 4, everyMm: 16 });
    expect(span!.today[0]?.packets).toBeUndefined();
  });
});
