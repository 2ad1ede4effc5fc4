import { beforeAll, expect, it } from 'vitest';
import { firstWords } from '../../i18n/index.svelte';
import { lineOf } from './words';

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
