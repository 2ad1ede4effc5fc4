import { describe, expect, it } from 'vitest';
import type { ReachAnswer, ReachCellView, TargetView, Tone, ToneSwatch } from '../api/types';
import { withWish, type Wish } from './aims';
import { newVisit } from './head';
import { askedZones, cellKey, cellOf, placeOf, reachOf, telling, wordsFor } from './reach';

const cell = (level: number, tone: Tone, reachable: boolean, level_error = 0): ReachCellView => ({
  level,
  tone,
  reachable,
  nearest: { l: 30, a: 5, b: 10 },
  srgb: { hex: '#505050', out_of_gamut: false },
  wished_srgb: { hex: '#606060', out_of_gamut: false },
  level_error,
  tone_error: 0,
  contrast_levels: 0,
  why: reachable ? [] : [{ code: 'tone_out_of_reach', path: '', params: {} }],
});
const answer: ReachAnswer = {
  schema: 'strandline.reach/1',
  go: 'go',
  verdicts: [],
  zones: [
    {
      zone: 'crown/regrowth',
      recipes: 9,
      corners: [],
      cells: [cell(5, 'gold', true), cell(8, 'gold', false, 0.6)],
    },
    {
      zone: 'nape/lengths',
      recipes: 9,
      corners: [],
      cells: [cell(5, 'gold', true), cell(8, 'gold', false, 2)],
    },
    {
      zone: 'top/lengths',
      recipes: 9,
      corners: [],
      cells: [cell(5, 'gold', false, 1), cell(8, 'gold', true)],
    },
  ],
};

describe('the reach map', () => {
  it('counts a cell only where every asked zone reaches it', () => {
    const two = reachOf(answer, ['crown/regrowth', 'nape/lengths']);
    expect(two.get(cellKey(5, 'gold'))?.reachable).toBe(true);
    const three = reachOf(answer, ['crown/regrowth', 'nape/lengths', 'top/lengths']);
    expect(three.get(cellKey(5, 'gold'))?.reachable).toBe(false);
    expect(three.get(cellKey(5, 'gold'))?.missed.map((m) => m.zone)).toEqual(['top/lengths']);
  });

  it('names the zone that stays farthest away first', () => {
    const map = reachOf(answer, ['crown/regrowth', 'nape/lengths']);
    expect(map.get(cellKey(8, 'gold'))?.missed.map((m) => m.zone)).toEqual([
      'nape/lengths',
      'crown/regrowth',
    ]);
  });

  it('lets the zone speak that misses a place farthest, else one that only just reaches it', () => {
    const all = ['crown/regrowth', 'nape/lengths', 'top/lengths'];
    const told = (zones: string[], level?: number) =>
      telling(answer, zones, level ? { level, tone: 'gold' } : undefined);
    expect(told(all, 8)?.zone.zone).toBe('nape/lengths');
    expect(told(all, 5)?.zone.zone).toBe('top/lengths');
    expect(told(all, 5)?.cell?.reachable).toBe(false);
    expect(told(['crown/regrowth'], 5)?.cell?.reachable).toBe(true);
    expect(told(all)).toEqual({ zone: answer.zones[0], cell: undefined });
    expect(told([])).toBeUndefined();
  });

  it('looks a wish between two levels up at the darker one', () => {
    const map = reachOf(answer, ['crown/regrowth']);
    const at = (wish: Wish, target?: TargetView) => cellOf(map, placeOf(wish, target))?.reachable;
    expect(at({ level: 8.5, tone: 'gold' })).toBe(false);
    expect(at({ level: 5.5, tone: 'gold' })).toBe(true);
    expect(at({ leave: true })).toBeUndefined();
  });

  it('looks a shade or picked colour up where the server says that it lies', () => {
    const target = (level: number): TargetView => ({ level, tone: 'gold', leave: false }) as TargetView;
    expect(placeOf({ shade: 'any' }, target(7.9))).toEqual({ level: 8, tone: 'gold' });
    expect(placeOf({ lab: { l: 50, a: 5, b: 20 } }, target(7.6))).toEqual({ level: 7, tone: 'gold' });
    expect(placeOf({ shade: 'any' }, target(12))?.level).toBe(10);
    expect(placeOf({ shade: 'any' }, undefined)).toBeUndefined();
  });

  it('leaves out zones that are to be left alone', () => {
    const visit = newVisit('A. B.', '2026-03-09');
    const all = askedZones(visit, {});
    const left = withWish(visit, { span: 'lengths' }, { leave: true });
    expect(askedZones(left, {}).length).toBeLessThan(all.length);
    expect(askedZones(left, {}).some((zone) => zone.endsWith('/lengths'))).toBe(false);
  });

  it('finds the words of the nearest swatch', () => {
    const swatch = (level: number, tone: Tone, l: number): ToneSwatch => ({
      level,
      tone,
      lab: { l, a: 5, b: 10 },
      srgb: {} as ToneSwatch['srgb'],
    });
    const swatches = [swatch(4, 'natural', 25), swatch(5, 'gold', 31), swatch(6, 'ash', 40)];
    expect(wordsFor({ l: 30, a: 5, b: 10 }, swatches)?.tone).toBe('gold');
    expect(wordsFor({ l: 30, a: 5, b: 10 }, [])).toBeUndefined();
  });
});
