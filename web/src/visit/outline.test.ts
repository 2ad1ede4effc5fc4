import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BASE_AREAS } from '../outlines/types';
import { addArea, joinAreas, partArea, removeArea, renameArea } from './areas';
import { areaKinds, newHead } from './head';
import { takeUp } from './weave';
import { partings } from './places';
import { outlineAreas, outlineStyle } from './outline';

describe('outlines of a head', () => {
  it('cover every part of the drawing exactly once for the usual five areas', () => {
    const bases = outlineAreas(newHead(), () => undefined).flatMap((a) => a.regions.map((r) => r.base));
    expect(bases.toSorted()).toEqual([...BASE_AREAS].toSorted());
  });

  it('never leave a hole, whatever is parted, joined, renamed, removed or added', () => {
    const change = fc.oneof(
      fc.record({ part: fc.nat(20), way: fc.nat(2) }),
      fc.record({ join: fc.tuple(fc.nat(20), fc.nat(20)) }),
      fc.record({ remove: fc.nat(20) }),
      fc.record({ rename: fc.nat(20) }),
      fc.record({ weave: fc.nat(20) }),
      fc.record({ add: fc.constantFrom(...areaKinds) }),
    );
    fc.assert(
      fc.property(fc.array(change, { maxLength: 6 }), (changes) => {
        let head = newHead();
        const at = (n: number) => head.areas[n % head.areas.length]!.id;
        for (const c of changes) {
          if ('part' in c) {
            const ways = partings(at(c.part));
            if (ways.length) head = partArea(head, at(c.part), ways[c.way % ways.length]!).head;
          } else if ('join' in c) {
            head = joinAreas(head, c.join.map(at), at(c.join[0])).head;
          } else if ('remove' in c) head = removeArea(head, at(c.remove));
          else if ('rename' in c) head = renameArea(head, at(c.rename), `own ${c.rename}`).head;
          else if ('weave' in c) head = takeUp(head, at(c.weave)).head;
          else head = addArea(head, c.add, at(0)).head;
        }
        if (head.areas.every((a) => (a.kind ?? 'other') === 'other')) return;
        const areas = outlineAreas(head, () => undefined);
        expect(areas.map((a) => a.id)).toEqual(head.areas.map((a) => a.id));
        for (const base of BASE_AREAS) {
          const size = areas
            .flatMap((a) => a.regions.filter((r) => r.base === base))
            .reduce((sum, r) => sum + r.slices.reduce((part, s) => part / s.of, 1), 0);
          // Names that claim the same place twice are drawn over one another; a hole never shows.
          expect(size, base).toBeGreaterThan(1 - 1e-9);
        }
      }),
    );
  });

  it('show a half where its name says, and another name in what is left', () => {
    const { head } = partArea(newHead(), 'top', 'front-back');
    const fringe = renameArea(head, 'top front', 'fringe').head;
    const areas = outlineAreas(fringe, () => undefined);
    expect(areas.find((a) => a.id === 'fringe')?.regions).toEqual([
      { base: 'top', slices: [{ cut: 'front-back', index: 0, of: 2 }] },
    ]);
  });

  it('show the sides of a head one by one once they are parted', () => {
    const { head } = partArea(newHead(), 'sides', 'left-right');
    const sides = outlineAreas(head, () => undefined).filter((a) => a.id.startsWith('sides'));
    expect(sides.map((a) => a.label)).toEqual(['left side', 'right side']);
    expect(sides.map((a) => a.regions[0]?.base)).toEqual(['side-left', 'side-right']);
  });

  it('give a removed area to its neighbour', () => {
    const areas = outlineAreas(removeArea(newHead(), 'nape'), () => undefined);
    expect(areas.find((a) => a.id === 'crown')?.regions.map((r) => r.base)).toContain('nape');
  });

  it('draw short hair short and curls curled', () => {
    const head = newHead();
    expect(outlineStyle(head)).toBe('long');
    expect(outlineStyle({ ...head, hair: { texture: 'coily' } })).toBe('curly');
    const as = (to_cm: number, hair_factor?: number) =>
      outlineStyle({ areas: [{ id: 'top', hair_factor, spans: [{ id: 'lengths', from_cm: 0, to_cm }] }] });
    expect([as(5), as(30), as(78)]).toEqual(['cropped', 'long', 'very_long']);
    expect([as(5, 0.5), as(30, 0.5), as(5, 1)]).toEqual(['thinning', 'long', 'cropped']);
  });
});
