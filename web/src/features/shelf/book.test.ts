import { describe, expect, it } from 'vitest';
import { parseRoute, shelfHref } from '../../shell/route.svelte';
import { called, typedNumber } from './book.svelte';

describe('a shelf that is typed', () => {
  it('reads numbers as people type them, and nothing as not known', () => {
    expect(typedNumber('9,5')).toBe(9.5);
    expect(typedNumber(' 60 ')).toBe(60);
    expect(typedNumber('')).toBeUndefined();
    expect(typedNumber('sixty')).toBeNaN();
  });

  it('calls a product by its code first', () => {
    const product = { id: 'a', cls: 'permanent', name: '7 copper' } as const;
    expect(called(product)).toBe('7 copper');
    expect(called({ ...product, code: 'K7' })).toBe('K7 · 7 copper');
    expect(called({ id: 'a', cls: 'permanent' })).toBe('a');
  });

  it('has a place of its own', () => {
    expect(parseRoute('#/shelf')).toEqual({ page: 'shelf' });
    expect(parseRoute(shelfHref('our shelf'))).toEqual({ page: 'shelf', id: 'our shelf' });
    expect(parseRoute('#/shelf/a/b').page).toBe('unknown');
  });
});
