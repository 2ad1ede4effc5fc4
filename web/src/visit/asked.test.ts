import { describe, expect, it } from 'vitest';
import type { ShelfAnswer } from '../api/types';
import { newVisit } from './head';
import { ages, asUsual, makerOf, moreTold, reactions, readClear, scalps, tattoos, wasAsked } from './asked';

describe('what is asked before anything is mixed', () => {
  it('begins with not known, so that nothing is answered by itself', () => {
    for (const words of [ages, reactions, tattoos, scalps]) expect(words[0]).toBe('unknown');
  });

  it('answers every question at once where there was nothing to tell', () => {
    expect(ages).toContain(asUsual.age);
    expect(asUsual).toMatchObject({ age: 'adult', reaction: 'none', tattoo: 'no_tattoo', scalp: 'calm' });
    expect(asUsual.doctor_agrees).toBeUndefined();
  });

  it('is done once each question has an answer, whatever day a test was', () => {
    const fresh = { ...newVisit('A. B.', '2026-03-09'), skin_test: '2026-03-04' };
    expect(wasAsked(fresh)).toBe(false);
    expect(wasAsked({ ...fresh, answers: asUsual })).toBe(true);
    expect(wasAsked({ ...fresh, answers: { ...asUsual, scalp: 'unknown' } })).toBe(false);
  });

  it('counts what was told of the rarer questions', () => {
    const fresh = newVisit('A. B.', '2026-03-09');
    expect(moreTold(fresh)).toBe(0);
    const answers = {
      asthma: 'yes',
      pregnancy_week: 0,
      incidents: [{ kind: 'burn' }],
      medicine: 'unknown',
    } as const;
    expect(moreTold({ ...fresh, answers: { ...answers, incidents: [...answers.incidents] } })).toBe(3);
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
