import { beforeAll, expect, it } from 'vitest';
import { firstWords } from '../i18n/index.svelte';
import { lineOf, movedBy } from './taught';

beforeAll(() => firstWords());

it('says whose and by how much', () => {
  expect(
    lineOf({ code: 'learned_deeper', path: '', params: { whose: 'range', id: 'own/demi', levels: '0.52' } }),
  ).toBe('Range demi: takes 0.5 levels deeper than foreseen');
  expect(
    lineOf({ code: 'learned_lifts_less', path: '', params: { whose: 'person', id: 'x', levels: '0.3' } }),
  ).toBe('This client: lifts 0.3 levels less than foreseen');
});

it('shows a word it does not know as itself', () => {
  expect(lineOf({ code: 'learned_else', path: '', params: {} })).toContain('learned_else');
});

it('calls a range by its name where that is known', () => {
  const word = { code: 'learned_deeper', path: '', params: { whose: 'range', id: 'own/r2', levels: '0.5' } };
  expect(lineOf(word, { r2: 'Harbour' })).toBe('Range Harbour: takes 0.5 levels deeper than foreseen');
});

it('names the zones that an eye sees moved', () => {
  const zone = (name: string, expected: number) => ({
    ...{ zone: name, untaught: 6, expected },
    ...{ low: 5, high: 7, results: 3 },
  });
  const here = { words: [], zones: [zone('top/roots', 5.7), zone('top/lengths', 6.1)] };
  expect(movedBy(here).map((one) => one.zone)).toEqual(['top/roots']);
  expect(movedBy(undefined)).toEqual([]);
});
