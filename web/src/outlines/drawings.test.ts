import { describe, expect, it } from 'vitest';
import { bumps, mirrored, regionBox } from './geometry';
import { seenFrom, viewOf } from './seen';
import { BASE_AREAS, CUTS, VIEWS, type HeadArea } from './types';

const area = (base: HeadArea['regions'][0]['base'], cut?: (typeof CUTS)[number], index = 0): HeadArea => ({
  id: base,
  label: base,
  regions: [{ base, slices: cut ? [{ cut, index, of: 2 }] : [] }],
});

describe('the drawings', () => {
  it('show every area in at least one view', () => {
    for (const base of BASE_AREAS)
      expect(
        VIEWS.some((view) => seenFrom(view, area(base))),
        base,
      ).toBe(true);
  });

  it('turn to what is chosen only when it is hidden', () => {
    expect(viewOf(area('top'), 'back')).toBe('back');
    expect(viewOf(area('nape'), 'front')).toBe('left');
    expect(viewOf(area('side-left', 'front-back', 1), 'front')).toBe('left');
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
