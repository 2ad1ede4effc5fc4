import { describe, expect, it } from 'vitest';
import type { ColourView, Head, PlanAnswer, ShelfAnswer, Visit, ZoneView } from '../api/types';
import { afterPlan, returning, withRounds } from './carry';
import { isFix } from './ended';
import { newHead, withReading, zoneId } from './head';
import { readSpan } from './reading';
import { takeUp } from './weave';

const view = (level: number, contrast: number): ColourView =>
  ({
    level,
    tone: 'gold',
    contrast_levels: contrast,
    porosity: 1.2,
    populations: [],
  }) as unknown as ColourView;

function planFor(head: ReturnType<typeof newHead>, bowlOn: RegExp, contrast = 0.2) {
  const zones = head.areas.flatMap((area) =>
    area.spans.map((span) => {
      const zone = zoneId(area, span);
      return { zone, bowl: bowlOn.test(zone) ? 'A' : '', planned: view(6.1, contrast) } as ZoneView;
    }),
  );
  return { zones, bowls: [{ label: 'A', parts: [{ product: 'p' }] }] } as unknown as PlanAnswer;
}
const shelf = (cls: string) => ({ products: [{ id: 'p', cls }] }) as unknown as ShelfAnswer;

describe('a head that comes back', () => {
  let head = newHead();
  for (const area of head.areas) head = withReading(head, area.id, 'regrowth', { white: 40 });

  it('carries the predicted colour where a bowl went', () => {
    const after = afterPlan(head, planFor(head, /regrowth/), shelf('permanent'));
    const [regrowth, lengths] = after.areas[0]!.spans;
    expect(readSpan(regrowth!)).toMatchObject({
      level: 6,
      tone: 'gold',
      white: 0,
      origin: 'tinted',
      naturalLevel: 5,
    });
    expect(lengths).toEqual(head.areas[0]!.spans[1]);
  });

  it('still reads white that the plan left standing out, and says what was lightened', () => {
    const after = afterPlan(head, planFor(head, /regrowth/, 1.5), shelf('lightener'));
    expect(readSpan(after.areas[0]!.spans[0]!)).toMatchObject({ white: 40, origin: 'lightened' });
  });

  it('grows natural hair with its own white at the scalp, the old regrowth outwards as a band', () => {
    const after = afterPlan(head, planFor(head, /regrowth/), shelf('permanent'));
    const [first, band, lengths] = returning(head, after, 1.5).areas[0]!.spans;
    expect(first).toMatchObject({ id: 'regrowth', from_cm: 0, to_cm: 1.5 });
    expect(readSpan(first!)).toMatchObject({ level: 5, white: 40, origin: 'natural' });
    expect(band).toMatchObject({ id: 'band', from_cm: 1.5, to_cm: 3 });
    expect(readSpan(band!)).toMatchObject({ level: 6, tone: 'gold', origin: 'tinted' });
    expect(lengths).toMatchObject({ id: 'lengths', from_cm: 3, to_cm: 21.5 });
  });

  it('joins spans that now read alike', () => {
    const even = withReading(head, 'crown', 'regrowth', { white: 0 });
    const after = afterPlan(even, planFor(even, /crown/), shelf('permanent'));
    const crown = returning(even, after, 2).areas.find((a) => a.id === 'crown')!;
    expect(crown.spans.map((s) => [s.id, s.from_cm, s.to_cm])).toEqual([
      ['regrowth', 0, 2],
      ['lengths', 2, 22],
    ]);
  });

  it('keeps packets as packets: what was lightened moves out, off the scalp grows new hair', () => {
    const woven = takeUp(head, 'top').head;
    const after = afterPlan(woven, planFor(woven, /packets\/regrowth/), shelf('lightener'));
    const back = returning(woven, after, 2);
    const packets = back.areas.find((a) => a.id === 'top packets')!;
    expect(packets.woven).toEqual({ from: 'top', share: 0.3, width_mm: 4 });
    expect(packets.spans.map((s) => [s.id, s.from_cm, s.to_cm])).toEqual([
      ['regrowth', 0.5, 2.5],
      ['band', 2.5, 3.5],
      ['lengths', 3.5, 22],
    ]);
    expect(packets.spans.map((s) => readSpan(s).origin)).toEqual(['natural', 'lightened', 'natural']);
    expect(back.areas.find((a) => a.id === 'top')!.spans[0]!.from_cm).toBe(0);
  });

  it('keeps the spans joined when nothing has grown', () => {
    const same = returning(head, head, 0);
    expect(same.areas[0]!.spans.map((s) => s.id)).toEqual(['regrowth', 'lengths']);
  });
});

describe('a visit that is put right', () => {
  const after: Head = {
    areas: [
      {
        id: 'top',
        spans: [
          { id: 'all', to_cm: 12, level: 8 },
          { id: 'ends', from_cm: 12, to_cm: 20, level: 8 },
        ],
      },
    ],
  };
  const shelf = {
    products: [
      { id: 'powder', cls: 'lightener' },
      { id: 'gloss', cls: 'demi' },
      { id: 'care', cls: 'post_treatment' },
    ],
  } as unknown as ShelfAnswer;
  const mix = (product: string, zones: string[], grams = 20) => ({ zones, parts: [{ product, grams }] });
  it('counts each round of that day on the spans that had it', () => {
    const mixed = [
      mix('powder', ['top/all']),
      mix('powder', ['top/all']),
      mix('gloss', ['top/all', 'top/ends']),
      mix('care', ['top/ends']),
      mix('powder', ['top/ends'], 0),
    ];
    const spans = withRounds(after, mixed, shelf, 1).areas[0]!.spans;
    expect(spans[0]!.services).toEqual([
      { kind: 'lightened', weeks_ago: 0.14, layers: 2 },
      { kind: 'coloured', weeks_ago: 0.14, layers: 1 },
    ]);
    expect(spans[1]!.services).toEqual([{ kind: 'coloured', weeks_ago: 0.14, layers: 1 }]);
  });
  it('is told by the history of the hair alone', () => {
    const visit = (head: Head) => ({ schema: 'strandline.visit/1', head }) as Visit;
    expect(isFix(visit(withRounds(after, [mix('gloss', ['top/all'])], shelf, 0)))).toBe(true);
    expect(isFix(visit(withRounds(after, [mix('gloss', ['top/all'])], shelf, 2)))).toBe(false);
    expect(isFix(visit(after))).toBe(false);
  });
});
