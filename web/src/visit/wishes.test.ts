import { describe, expect, it } from 'vitest';
import { wishFor, withWish } from './aims';
import { newVisit } from './head';
import { asArea, asSpan, blended, covered, holds, possible, shadowed, withWishes } from './wishes';

const start = newVisit('A. B.', '2024-05-02');
const white = {
  ...start,
  head: {
    areas: start.head.areas.map((area) => ({
      ...area,
      spans: area.spans.map((span, nth) => ({ ...span, white_percent: nth === 0 ? 60 : 0 })),
    })),
  },
};
const nape = start.head.areas.find(({ id }) => id === 'nape')!;

describe('a wish that speaks of today', () => {
  it('matches each area’s regrowth to its own lengths and leaves the lengths', () => {
    const visit = withWishes(start, {}, asSpan('lengths'));
    expect(wishFor(visit, 'crown/regrowth')).toEqual({ match: 'crown/lengths' });
    expect(wishFor(visit, 'crown/lengths')).toBeUndefined();
    expect(holds(visit, {}, asSpan('lengths'))).toBe(true);
    expect(holds(visit, {}, asSpan('regrowth'))).toBe(false);
  });

  it('matches an area to another one, never to itself', () => {
    const visit = withWishes(start, {}, asArea(nape));
    expect(wishFor(visit, 'crown/regrowth')).toEqual({ match: 'nape/regrowth' });
    expect(wishFor(visit, 'nape/regrowth')).toBeUndefined();
    expect(possible(start.head, { area: 'nape' }, asArea(nape))).toBe(false);
  });

  it('blends or covers white only where there is white', () => {
    expect(possible(start.head, {}, covered)).toBe(false);
    const blend = withWishes(white, { area: 'top' }, blended(0.4));
    expect(blend.aims).toEqual([{ zone: 'top/regrowth', blend: 0.4 }]);
    expect(withWishes(white, { area: 'top' }, covered).aims).toEqual([
      { zone: 'top/regrowth', level: 5, tone: 'natural' },
    ]);
  });

  it('keeps what other zones wish', () => {
    const wished = withWish(white, { area: 'top' }, { level: 7, tone: 'gold' });
    const visit = withWishes(wished, { area: 'nape' }, blended(0.5));
    expect(wishFor(visit, 'top/lengths')).toEqual({ level: 7, tone: 'gold' });
    expect(wishFor(visit, 'nape/regrowth')).toEqual({ blend: 0.5 });
  });
});

describe('a shadow at the root', () => {
  it('is darker than what is wished below it, in the same tone', () => {
    const visit = withWish(start, { span: 'lengths' }, { level: 8, tone: 'beige' });
    const shadow = shadowed(visit, 1.5);
    const shaded = withWishes(visit, {}, shadow);
    expect(wishFor(shaded, 'crown/regrowth')).toEqual({ shadow: 1.5, tone: 'beige' });
    expect(wishFor(shaded, 'crown/lengths')).toEqual({ level: 8, tone: 'beige' });
  });

  it('takes the tone of the hair below where nothing is wished there', () => {
    expect(wishFor(withWishes(start, {}, shadowed(start, 9)), 'top/regrowth')).toEqual({
      shadow: 9,
      tone: 'natural',
    });
  });

  it('needs hair below the root', () => {
    const short = {
      ...start,
      head: { areas: start.head.areas.map((area) => ({ ...area, spans: area.spans.slice(0, 1) })) },
    };
    expect(possible(short.head, {}, shadowed(short, 1))).toBe(false);
  });
});
