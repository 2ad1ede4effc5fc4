import { describe, expect, it } from 'vitest';
import { areaBecame, pruned, wishFor, withWish } from './aims';
import { joinAreas, partArea, readAlike } from './areas';
import { newHead, newVisit, withReading } from './head';
import { readSpan } from './reading';

const white = (head: ReturnType<typeof newHead>, id: string) =>
  readSpan(head.areas.find((a) => a.id === id)!.spans[0]!).white;
const scalp = (head: ReturnType<typeof newHead>) =>
  head.areas.reduce((sum, a) => sum + (a.scalp_cm2 ?? 100), 0);

describe('parting an area', () => {
  it('copies the reading and shares the scalp', () => {
    const head = withReading(newHead(), 'crown', 'regrowth', { white: 40 });
    const { head: next, ids } = partArea(head, 'crown', 'left-right');
    expect(ids).toEqual(['crown left', 'crown right']);
    expect(next.areas.map((a) => a.id)).toEqual(head.areas.flatMap((a) => (a.id === 'crown' ? ids : [a.id])));
    expect(ids.map((id) => white(next, id))).toEqual([40, 40]);
    expect(scalp(next)).toBe(scalp(head));
    // Two readings, not one that is seen twice.
    expect(white(withReading(next, 'crown left', 'regrowth', { white: 5 }), 'crown right')).toBe(40);
  });

  it('gives an area with a name of its own a second name', () => {
    const head = { areas: [{ ...newHead().areas[0]!, id: 'fringe' }] };
    expect(partArea(head, 'fringe', 'halves').ids).toEqual(['fringe', 'fringe 2']);
  });

  it('does nothing where there is nothing to part', () => {
    const head = newHead();
    expect(partArea(head, 'crown', 'front-back')).toEqual({ head, ids: ['crown'], became: new Map() });
    expect(partArea(head, 'fringe', 'left-right').head).toBe(head);
  });
});

describe('joining areas', () => {
  it('keeps one reading and all of the scalp, in the place of the first', () => {
    const head = withReading(newHead(), 'crown', 'regrowth', { white: 40 });
    expect(readAlike(head, ['top', 'crown'])).toBe(false);
    expect(readAlike(head, ['top', 'nape'])).toBe(true);
    const { head: next, ids } = joinAreas(head, ['crown', 'top'], 'crown');
    expect(ids).toEqual(['top + crown']);
    expect(next.areas.map((a) => a.id)).toEqual(['front hairline', 'top + crown', 'sides', 'nape']);
    expect(white(next, 'top + crown')).toBe(40);
    expect(scalp(next)).toBe(scalp(head));
  });

  it('undoes a parting', () => {
    const head = newHead();
    const parted = partArea(head, 'nape', 'upper-lower');
    const { head: next, ids } = joinAreas(parted.head, parted.ids, parted.ids[0]!);
    expect(ids).toEqual(['nape']);
    expect(next.areas.map((a) => a.id)).toEqual(head.areas.map((a) => a.id));
  });

  it('keeps the first name where a name says no place', () => {
    const areas = newHead()
      .areas.slice(0, 3)
      .map((a, i) => (i === 0 ? { ...a, id: 'fringe' } : a));
    const { head: next, ids } = joinAreas({ areas }, ['fringe', 'top'], 'top');
    expect(ids).toEqual(['fringe']);
    expect(next.areas.map((a) => a.id)).toEqual(['fringe', 'crown']);
  });

  it('needs two', () => {
    const head = newHead();
    expect(joinAreas(head, ['top'], 'top').head).toBe(head);
    expect(joinAreas(head, ['top', 'crown'], 'nape').head).toBe(head);
  });
});

describe('wishes and bowls', () => {
  const gold = { level: 7, tone: 'gold' as const };
  const ash = { level: 6, tone: 'ash' as const };
  const bowl = { label: 'A', range: 'r', parts: [], minutes: 30, zones: ['top/regrowth', 'crown/regrowth'] };
  const start = {
    ...withWish(withWish(newVisit('A', '2024-05-02'), { area: 'top' }, gold), { area: 'crown' }, ash),
    bowls: [bowl],
  };

  it('hold for every piece of a parted area', () => {
    const { head, ids, became } = partArea(start.head, 'top', 'front-back');
    const next = pruned({ ...areaBecame(start, became), head });
    for (const id of ids) expect(wishFor(next, `${id}/lengths`)).toEqual(gold);
    expect(next.bowls?.[0]?.zones).toEqual(['top front/regrowth', 'top back/regrowth', 'crown/regrowth']);
  });

  it('of the kept reading hold for the joined area, once', () => {
    const { head, became } = joinAreas(start.head, ['top', 'crown'], 'crown');
    const next = pruned({ ...areaBecame(start, became), head });
    expect(wishFor(next, 'top + crown/regrowth')).toEqual(ash);
    expect(next.aims?.filter((a) => a.zone.startsWith('top'))).toHaveLength(2);
    expect(next.bowls?.[0]?.zones).toEqual(['top + crown/regrowth']);
  });
});
