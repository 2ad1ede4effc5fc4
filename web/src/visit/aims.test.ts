import { describe, expect, it } from 'vitest';
import { areaBecame, pruned, wishFor, wishIn, withWish } from './aims';
import { removeArea, renameArea } from './areas';
import { newVisit } from './head';

const gold = { level: 7, tone: 'gold' as const };
const ash = { level: 6, tone: 'ash' as const };
const start = newVisit('A. B.', '2024-05-02');

describe('wishes', () => {
  it('for everywhere hold for every zone', () => {
    const visit = withWish(start, {}, gold);
    expect(wishFor(visit, 'crown/regrowth')).toEqual(gold);
    expect(wishIn(visit, { area: 'nape' })).toEqual(gold);
  });

  it('of one zone stand before the one for everywhere', () => {
    const visit = withWish(withWish(start, {}, gold), { area: 'nape', span: 'regrowth' }, ash);
    expect(wishFor(visit, 'nape/regrowth')).toEqual(ash);
    expect(wishFor(visit, 'nape/lengths')).toEqual(gold);
    expect(wishIn(visit, { area: 'nape' })).toBeUndefined();
  });

  it('of one span reach every area', () => {
    const visit = withWish(withWish(start, {}, gold), { span: 'lengths' }, { leave: true });
    for (const area of visit.head.areas)
      expect(wishFor(visit, `${area.id}/lengths`)).toEqual({ leave: true });
    expect(visit.aims).toHaveLength(6);
  });

  it('a new wish for everywhere clears the others', () => {
    const visit = withWish(withWish(start, { area: 'top' }, ash), {}, gold);
    expect(visit.aims).toEqual([{ zone: '*', ...gold }]);
  });

  it('go with their zone and follow its new name', () => {
    const visit = withWish(withWish(start, {}, gold), { area: 'nape' }, ash);
    const gone = pruned({ ...visit, head: removeArea(visit.head, 'nape') });
    expect(gone.aims).toEqual([{ zone: '*', ...gold }]);
    const { head, became } = renameArea(visit.head, 'nape', 'low nape');
    expect(wishFor(pruned({ ...areaBecame(visit, became), head }), 'low nape/regrowth')).toEqual(ash);
  });

  it('that match another zone follow its new name, and go with it', () => {
    const visit = withWish(start, { area: 'top' }, { match: 'nape/lengths' });
    const { head, became } = renameArea(visit.head, 'nape', 'low nape');
    const renamed = pruned({ ...areaBecame(visit, became), head });
    expect(wishFor(renamed, 'top/regrowth')).toEqual({ match: 'low nape/lengths' });
    expect(pruned({ ...visit, head: removeArea(visit.head, 'nape') }).aims).toEqual([]);
  });

  it('leave a visit alone that has nothing stale', () => {
    const visit = withWish(start, {}, gold);
    expect(pruned(visit)).toBe(visit);
  });
});
