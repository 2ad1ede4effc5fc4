import { afterEach, describe, expect, it } from 'vitest';
import { settings } from '../shell/settings.svelte';
import { de } from './de';
import { en } from './en';
import { es } from './es';
import { level, mass, number, strength } from './format';
import { fr } from './fr';
import { setLanguage, t } from './index.svelte';

afterEach(() => {
  setLanguage('en');
  settings.mass = 'g';
  settings.strength = 'percent';
});

describe('dictionaries', () => {
  it('French has every key of English and no other', () => {
    expect(Object.keys(fr).sort()).toEqual(Object.keys(en).sort());
  });

  it.each([
    ['es', es],
    ['de', de],
  ])('%s has no key that English lacks', (_, dictionary) => {
    for (const key of Object.keys(dictionary)) expect(en).toHaveProperty([key]);
  });

  it('keeps sentences and functions apart in every language', () => {
    for (const dictionary of [fr, es, de]) {
      for (const [key, entry] of Object.entries(dictionary)) {
        expect(typeof entry, key).toBe(typeof en[key as keyof typeof en]);
      }
    }
  });

  it('falls back to English where a language has no entry yet', () => {
    setLanguage('de');
    expect(t('ui.undo')).toBe('Rückgängig');
    expect(t('ui.kept')).toBe('Kept');
  });
});

describe('numbers', () => {
  it('follow the language', () => {
    setLanguage('fr');
    expect(number(12.5, 1)).toBe('12,5');
    setLanguage('en');
    expect(number(12.5, 1)).toBe('12.5');
  });

  it('show mass in grams or ounces (1 oz = 28.349523125 g, international pound)', () => {
    expect(mass(12.5)).toBe('12.5 g');
    settings.mass = 'oz';
    expect(mass(28.349523125)).toBe('1.00 oz');
  });

  it('show strength in percent or volumes (10 vol = 3 %, common practice)', () => {
    expect(strength(6)).toBe('6\u00a0%');
    settings.strength = 'volumes';
    expect(strength(6)).toBe('20 vol');
    expect(strength(1.5)).toBe('5 vol');
    expect(strength(4.5)).toBe('15 vol');
  });

  it('writes half levels the trade’s way', () => {
    expect(level(6)).toBe('6');
    expect(level(6.5)).toBe('6½');
    expect(level(10)).toBe('10');
  });
});
