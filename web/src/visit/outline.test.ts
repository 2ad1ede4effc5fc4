import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BASE_AREAS } from '../outlines/types';
import { addArea, removeArea, splitArea } from './areas';
import { areaKinds, newHead } from './head';
import { outlineAreas, outlineStyle } from './outline';

describe('outlines of a head', () => {
  it('cover every part of the drawing exactly once for the usual five areas', () => {
    const bases = outlineAreas(newHead(), () => undefined).flatMap((a) => a.regions.map((r) => r.base));
    expect(bases.toSorted()).toEqual([...BASE_AREAS].toSorted());
  });

  it('never leave a hole while an area of the neighbourhood is there', () => {
    const change = fc.record({ split: fc.nat(6) });
    const add = fc.record({ add: fc.constantFrom(...areaKinds) });
    fc.assert(
      fc.property(fc.array(fc.oneof(change, add), { maxLength: 5 }), (changes) => {
        let head = newHead();
        for (const c of changes) {
          const at = head.areas['split' in c ? c.split % head.areas.length : 0]!.id;
          head = 'split' in c ? splitArea(head, at).head : addArea(head, c.add, at).head;
        }
        const areas = outlineAreas(head, () => undefined);
        expect(areas.map((a) => a.id)).toEqual(head.areas.map((a) => a.id));
        const bases = new Set(areas.flatMap((a) => a.regions.map((r) => r.base)));
        expect(bases.size).toBe(BASE_AREAS.length);
      }),
    );
  });

  it('show the sides of a head one by one once they are split', () => {
    const { head } = splitArea(newHead(), 'sides');
    const sides = outlineAreas(head, () => undefined).filter((a) => a.id.startsWith('sides'));
    expect(sides.map((a) => a.regions.map((r) => r.base))).toEqual([
      expect.arrayContaining(['side-left']),
      ['side-right'],
    ]);
  });

  it('give a removed area to its neighbour', () => {
    const areas = outlineAreas(removeArea(newHead(), 'nape'), () => undefined);
    expect(areas.find((a) => a.id === 'crown')?.regions.map((r) => r.base)).toContain('nape');
  });

  it('draw short hair short and curls curled', () => {
    const head = newHead();
    expect(outlineStyle(head)).toBe('long');
    expect(outlineStyle({ ...head, hair: { texture: 'coily' } })).toBe('curly');
  });
});
