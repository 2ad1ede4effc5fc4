import { describe, expect, it } from 'vitest';
import type { ColourView, Rgb, UnderLights } from '../api/types';
import { expectedMean, toLinear } from '../strand/colour';
import { newHead, zoneId } from './head';
import { screen, strandPicture, type ZonePicture } from './picture';
import { readSpan, writeSpan } from './reading';
import { moveStart, takeUp } from './weave';
import { describeStrand } from '../strand/describe';
import { layoutStrip } from '../strand/layout';
import { checkPicture } from '../strand/check';
import { strandWords } from './words';

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

describe('an area with packets', () => {
  const woven = takeUp(newHead(), 'top').head;
  const [top, packets] = ['top', 'top packets'].map((id) => woven.areas.find((a) => a.id === id)!) as [
    typeof area,
    typeof area,
  ];
  const dark = seen(lights('#3a2c22'), [['pigmented', 1, '#3a2c22']]);
  const mixed = seen(lights('#806a50'), [
    ['pigmented', 0.8, '#6a4c32'],
    ['white', 0.2, '#d8d2c4'],
  ]);
  const light = seen(lights('#d0b080'), [['pigmented', 1, '#d0b080']]);
  const zonesOf = (more: Partial<ZonePicture> = {}) =>
    new Map<string, ZonePicture>([
      ...top.spans.map((s) => [zoneId(top, s), { today: dark, planned: dark, bowls: ['A'] }] as const),
      ...packets.spans.map(
        (s) => [zoneId(packets, s), { today: mixed, planned: light, bowls: ['B'], ...more }] as const,
      ),
    ]);
  const all = zonesOf();
  const picture = strandPicture(woven, top, all, 'daylight')!;

  it('shows them as stripes of their width and colours, from where they begin', () => {
    expect(checkPicture(picture)).toEqual([]);
    expect(picture.spans.map((s) => [s.id, s.fromCm, s.toCm, s.goesOn ?? false])).toEqual([
      ['regrowth', 0, 0.5, false],
      ['regrowth 0.5', 0.5, 1.5, true],
      ['lengths', 1.5, 20, false],
    ]);
    const [bare, striped] = picture.spans;
    expect(bare!.today.every((p) => !p.packets)).toBe(true);
    const stripes = striped!.today.filter((p) => p.packets);
    expect(stripes.map((p) => p.share)).toEqual([expect.closeTo(0.24), expect.closeTo(0.06)]);
    expect(stripes[0]!.packets).toMatchObject({ widthMm: 4, group: { nth: 0, bed: screen('#806a50') } });
    expect(stripes[0]!.packets!.everyMm).toBeCloseTo(4 / 0.3);
    expect(striped!.planned.find((p) => p.packets)!.srgb).toEqual(screen('#d0b080'));
    // What is seen of it all: 70 parts of the hair between, 30 of the packets as they are seen together.
    const drawn = expectedMean(striped!.today, striped!.mixedBed?.today);
    toLinear(screen('#3a2c22')).forEach((v, k) =>
      expect(drawn[k]).toBeCloseTo(0.7 * v + 0.3 * toLinear(screen('#806a50'))[k]!, 6),
    );
  });

  it('shows them alone in their own strip', () => {
    const own = strandPicture(woven, packets, all, 'daylight')!;
    expect(own.spans.map((s) => s.fromCm)).toEqual([0.5, 1.5]);
    expect(own.spans.flatMap((s) => s.today).every((p) => !p.packets)).toBe(true);
  });

  it('is parted at every border of both', () => {
    const longer = { ...packets, spans: packets.spans.map((s) => ({ ...s })) };
    longer.spans[0]!.to_cm = longer.spans[1]!.from_cm = 3;
    const head = { ...woven, areas: woven.areas.map((a) => (a === packets ? moveStart(longer, 1) : a)) };
    const { spans } = strandPicture(head, top, all, 'daylight')!;
    expect(spans.map((s) => [s.fromCm, s.toCm])).toEqual([
      [0, 1],
      [1, 1.5],
      [1.5, 3],
      [3, 20],
    ]);
    expect(spans.map((s) => s.goesOn ?? false)).toEqual([false, true, false, true]);
  });

  it('has the letters of both and a line only where the hair between changes', () => {
    const layout = layoutStrip(picture, { width: 500, pxPerCm: 20 });
    expect(layout.letters.map((l) => l.letter)).toEqual(['A', 'B']);
    expect(new Set(layout.letters.map((l) => l.x)).size).toBe(2);
    expect(layout.joins).toEqual([30]);
  });

  it('is told in the same words', () => {
    const [, bare, striped] = describeStrand(picture, strandWords()).map((line) =>
      line.replaceAll('\u00a0', ' '),
    );
    expect(bare).toContain('regrowth, 0 to 0.5 cm: today 100 % pigmented; after the plan');
    expect(bare).toContain('bowl A');
    expect(striped).toContain(
      'today 70 % pigmented and 30 % top packets in packets 4 mm wide every 13.3 mm; after the plan',
    );
    expect(striped).toContain('bowl A and bowl B');
  });

  it('shows the wish for packets, and is the same picture until something of it changes', () => {
    const srgb = lights('#e0c090');
    const wished = zonesOf({ planned: undefined, wished: { leave: false, srgb } as never });
    const shown = strandPicture(woven, top, wished, 'daylight')!;
    expect(shown.spans[1]!.planned.find((p) => p.packets)!.srgb).toEqual(screen('#e0c090'));
    expect(strandPicture(woven, top, wished, 'daylight')).toBe(shown);
    const wider = { ...packets, woven: { ...packets.woven!, width_mm: 8 } };
    const head = { ...woven, areas: woven.areas.map((a) => (a === packets ? wider : a)) };
    expect(strandPicture(head, top, wished, 'daylight')!.spans[1]!.today.at(-1)!.packets!.widthMm).toBe(8);
  });
});
