import { describe, expect, it } from 'vitest';
import type { ShelfAnswer } from '../api/types';
import { ages, asUsual, makerOf, reactions, readClear, scalps, tattoos } from './asked';

describe('what is asked before anything is mixed', () => {
  it('begins with not known, so that nothing is answered by itself', () => {
    for (const words of [ages, reactions, tattoos, scalps]) expect(words[0]).toBe('unknown');
  });

  it('answers every question at once where there was nothing to tell', () => {
    expect(ages).toContain(asUsual.age);
    expect(asUsual).toMatchObject({ age: 'adult', reaction: 'none', tattoo: 'no_tattoo', scalp: 'calm' });
    expect(asUsual.doctor_agrees).toBeUndefined();
  });

  it('takes a test for the colour on the shelf; without a shelf it names no maker', () => {
    const shelf = { ranges: [{ maker: 'one (invented)' }] } as unknown as ShelfAnswer;
    expect(readClear(shelf, '2026-03-09')).toEqual({
      maker: 'one (invented)',
      read: '2026-03-09',
      result: 'clear',
    });
    expect(makerOf(undefined)).toBe('');
  });
});
