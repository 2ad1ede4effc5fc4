import { describe, expect, it } from 'vitest';
import { joinedName, partedNames, partings, placesIn, regionsIn } from './places';

const bases = (name: string) => regionsIn(placesIn(name) ?? []).map((r) => r.base);

describe('names that say where an area is', () => {
  it('are parts of the head, halves of them, and several together', () => {
    expect(bases('front hairline')).toEqual(['hairline']);
    expect(bases('sides')).toEqual(['side-left', 'side-right']);
    expect(bases('sides right')).toEqual(['side-right']);
    expect(regionsIn(placesIn('sides left upper')!)).toEqual([
      { base: 'side-left', slices: [{ cut: 'upper-lower', index: 0, of: 2 }] },
    ]);
    expect(bases('top front + crown')).toEqual(['top', 'crown']);
  });

  it('are none of the colourist’s own', () => {
    for (const name of ['fringe', 'back', 'top left right', 'crown 2', 'packets + top', ''])
      expect(placesIn(name), name).toBeUndefined();
  });

  it('offer the partings that are left', () => {
    expect(partings('sides')).toEqual(['left-right', 'front-back', 'upper-lower']);
    expect(partings('sides left')).toEqual(['front-back', 'upper-lower']);
    expect(partings('top front left')).toEqual([]);
    expect(partings('top + crown')).toEqual(['apart']);
    expect(partings('fringe')).toEqual(['halves']);
  });

  it('follow a parting and find the whole again', () => {
    expect(partedNames('crown', 'upper-lower')).toEqual(['crown upper', 'crown lower']);
    expect(partedNames('top + crown', 'apart')).toEqual(['top', 'crown']);
    expect(partedNames('front hairline', 'front-back')).toEqual([]);
    expect(joinedName(['crown upper', 'crown lower'])).toBe('crown');
    expect(joinedName(['sides left', 'sides right upper', 'sides right lower'])).toBe('sides');
    expect(joinedName(['top', 'crown'])).toBe('top + crown');
    expect(joinedName(['top', 'fringe'])).toBeUndefined();
  });

  it('stay as short as the document allows', () => {
    const all = [
      'front hairline left',
      'temples left upper',
      'top front left',
      'crown upper left',
      'nape lower',
    ];
    expect(joinedName(all)).toBeUndefined();
  });
});
