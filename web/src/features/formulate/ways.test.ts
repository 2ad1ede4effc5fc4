import { afterEach, expect, it } from 'vitest';
import { setLanguage } from '../../i18n/index.svelte';
import { wayWords, worseWords } from './ways';

afterEach(() => setLanguage('en'));

it('says how much worse in words and as a figure', () => {
  expect(worseWords(0.00002)).toBe('hardly different (0 levels)');
  expect(worseWords(0.2)).toBe('about a quarter level off (0.20 levels)');
  expect(worseWords(0.5)).toBe('about half a level off (0.50 levels)');
  expect(worseWords(1)).toBe('about a level off (1 level)');
  expect(worseWords(-0.04)).toBe('0.04 levels nearer to the target');
  expect(worseWords(3)).toBe('more than a level off (3 levels)');
});

it('names every axis, and one it does not know', () => {
  const known = ['gentler', 'simpler', 'cheaper', 'fewer_bowls'].map(wayWords);
  expect(new Set([...known, wayWords('longer')]).size).toBe(5);
  setLanguage('fr');
  expect(wayWords('cheaper')).toBe('Moins cher');
});
