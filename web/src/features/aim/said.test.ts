import { afterEach, describe, expect, it } from 'vitest';
import { languages, setLanguage, t, type Language } from '../../i18n/index.svelte';
import { tones, wholeLevels } from '../../visit/tones';
import { depthWord, said } from './said';

describe('a target said in words', () => {
  afterEach(() => setLanguage('en'));

  it('mixes two tones and a depth; the first tone leads', () => {
    expect(said('violet-ash brown', 6)).toEqual({
      wish: { level: 4, tone: 'violet', second_tone: 'ash' },
      unknown: [],
    });
    expect(said('Ash violet, light brown', 6).wish).toMatchObject({
      level: 5,
      tone: 'ash',
      second_tone: 'violet',
    });
    setLanguage('de');
    expect(said('Violettasch Mittelbraun', 6).wish).toEqual({ level: 4, tone: 'violet', second_tone: 'ash' });
    setLanguage('fr');
    expect(said('châtain cuivré doré', 6).wish).toEqual({ level: 4, tone: 'copper', second_tone: 'gold' });
  });

  it('takes a number for the depth, halves too, and today’s where none is said', () => {
    expect(said('6½ gold', 3).wish).toEqual({ level: 6.5, tone: 'gold' });
    expect(said('6,5 gold', 3).wish).toEqual({ level: 6.5, tone: 'gold' });
    expect(said('copper', 5.2).wish).toEqual({ level: 5, tone: 'copper' });
    expect(said('light blonde', 5).wish).toEqual({ level: 8, tone: 'natural' });
  });

  it('names every word it makes nothing of, and a third tone', () => {
    expect(said('coloured mouse brown', 5)).toEqual({
      wish: { level: 4, tone: 'natural' },
      unknown: ['coloured', 'mouse'],
    });
    expect(said('red gold ash 7', 5).unknown).toEqual(['ash']);
    expect(said('14 red', 5).unknown).toEqual(['14']);
    expect(said('', 5)).toEqual({ wish: undefined, unknown: [] });
  });

  it('understands every depth and tone of every language as the screen says it', () => {
    for (const language of Object.keys(languages) as Language[]) {
      setLanguage(language);
      for (const level of wholeLevels)
        for (const tone of tones)
          expect(said(`${t(`tone.${tone}`)} ${depthWord(level)}`, 5), `${language} ${level} ${tone}`).toEqual(
            {
              wish: { level, tone },
              unknown: [],
            },
          );
    }
  });
});
