import { describe, expect, it } from 'vitest';
import { mergeAreas, possibleCuts, splitArea, wholeHead } from './areas';
import { DRAWINGS } from './drawings';
import { bumps, mirrored, regionBox } from './geometry';
import { BASE_AREAS, VIEWS } from './types';

const head = () => wholeHead((base) => base);
const part = (area: { label: string }, cut: string, index: number) => `${area.label} ${cut} ${index}`;

describe('areas of the head', () => {
  it('splits an area into two in its own place', () => {
    const areas = splitArea(head(), 'top', 'left-right', part);
    expect(areas.map((a) => a.id)).toEqual([
      'hairline',
      'temple-left',
      'temple-right',
      'top/left-right-0',
      'top/left-right-1',
      'crown',
      'side-left',
      'side-right',
      'nape',
    ]);
    expect(areas[3]?.regions).toEqual([{ base: 'top', slices: [{ cut: 'left-right', index: 0, of: 2 }] }]);
  });

  it('makes the whole again when both halves are merged', () => {
    const split = splitArea(head(), 'crown', 'upper-lower', part);
    const ids = split.filter((a) => a.id.startsWith('crown/')).map((a) => a.id);
    const merged = mergeAreas(split, ids, 'crown');
    expect(merged).toHaveLength(8);
    expect(merged.find((a) => a.label === 'crown')?.regions).toEqual([{ base: 'crown', slices: [] }]);
  });

  it('joins a whole that was split twice', () => {
    const once = splitArea(head(), 'nape', 'left-right', part);
    const twice = splitArea(once, 'nape/left-right-0', 'upper-lower', part);
    const ids = twice.filter((a) => a.id.startsWith('nape')).map((a) => a.id);
    expect(ids).toHaveLength(3);
    expect(mergeAreas(twice, ids, 'nape').find((a) => a.label === 'nape')?.regions).toEqual([
      { base: 'nape', slices: [] },
    ]);
  });

  it('keeps apart regions that are no halves of one parting', () => {
    const merged = mergeAreas(head(), ['top', 'hairline'], 'front');
    expect(merged).toHaveLength(7);
    expect(merged[0]).toMatchObject({ id: 'hairline+top', label: 'front' });
    expect(merged[0]?.regions.map((r) => r.base)).toEqual(['hairline', 'top']);
  });

  it('changes nothing when there is nothing to merge or to split', () => {
    expect(mergeAreas(head(), ['top'], 'x')).toEqual(head());
    expect(splitArea(head(), 'side-left', 'left-right', part)).toEqual(head());
    expect(possibleCuts({ id: 'x', label: 'x', regions: [] })).toEqual([]);
  });
});

describe('the drawings', () => {
  it('show every area in at least one view', () => {
    for (const base of BASE_AREAS) {
      expect(
        VIEWS.some((view) => DRAWINGS[view].areas.some((a) => a.base === base)),
        base,
      ).toBe(true);
    }
  });

  it('give a split area a place in at least one view, without overlap', () => {
    for (const area of head()) {
      for (const cut of possibleCuts(area)) {
        const views = VIEWS.filter((view) =>
          DRAWINGS[view].areas.some((a) => a.base === area.regions[0]?.base),
        );
        for (const index of [0, 1]) {
          const seen = views.some((view) => {
            const shape = DRAWINGS[view].areas.find((a) => a.base === area.id);
            return shape && regionBox({ base: shape.base, slices: [{ cut, index, of: 2 }] }, view, shape.box);
          });
          expect(seen, `${area.id} ${cut} ${index}`).toBe(true);
        }
      }
    }
  });

  it('halve the box along the parting', () => {
    const box = { x: 10, y: 20, width: 40, height: 60 };
    const half = (index: number) => ({
      base: 'top' as const,
      slices: [{ cut: 'left-right' as const, index, of: 2 }],
    });
    expect(regionBox(half(0), 'top', box)).toEqual({ x: 10, y: 20, width: 20, height: 60 });
    // From the front the client's left is at the viewer's right.
    expect(regionBox(half(0), 'front', box)).toEqual({ x: 30, y: 20, width: 20, height: 60 });
    expect(regionBox(half(1), 'left', box)).toBeNull();
  });

  it('mirror left and right and leave the middle', () => {
    expect(BASE_AREAS.map(mirrored)).toEqual([
      'hairline',
      'temple-right',
      'temple-left',
      'top',
      'crown',
      'side-right',
      'side-left',
      'nape',
    ]);
  });

  it('end a bumpy arc where it was asked to', () => {
    const d = bumps(0, 0, 10, 10, 0, 90, 3);
    expect(d.match(/A/g)).toHaveLength(3);
    const [x, y] = d.split(' ').slice(-2).map(Number) as [number, number];
    expect(Math.abs(x)).toBeLessThan(0.1);
    expect(y).toBeGreaterThan(9.7);
  });
});
