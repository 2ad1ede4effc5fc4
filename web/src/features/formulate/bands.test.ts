import { afterEach, describe, expect, it } from 'vitest';
import type { Band, PlanAnswer } from '../../api/types';
import { setLanguage } from '../../i18n/index.svelte';
import { newHead } from '../../visit/head';
import { bandLines } from './bands';

const head = newHead();
const crown = head.areas.find(({ id }) => id === 'crown')!;
const nape = head.areas.find(({ id }) => id === 'nape')!;
const band = (more: Partial<Band> = {}): Band => ({
  lighter: 'crown/lengths',
  darker: 'crown/regrowth',
  levels: 1.2,
  today: 0,
  wished: 0,
  ...more,
});
const plan = (bands: Band[], asked: Band[] = []) =>
  ({
    bands,
    notes: asked.map(({ lighter, darker }) => ({
      code: 'band_wished',
      path: '',
      params: { lighter, darker },
    })),
  }) as unknown as PlanAnswer;
const words = (one: Band, asked: Band[] = []) => bandLines(plan([one], asked), crown)[0]?.words;

afterEach(() => setLanguage('en'));

describe('a band at its strand', () => {
  it('is told where its two spans meet, with its levels and why', () => {
    expect(bandLines(plan([band()]), crown)).toEqual([
      { words: 'A band: lengths 1.2 levels lighter than regrowth; not there today.', atCm: 1.5 },
    ]);
    expect(bandLines(plan([band()]), nape)).toEqual([]);
  });

  it('says what became of it, and whether it was wished', () => {
    expect(words(band({ today: 1.2 }))).toContain('as today');
    expect(words(band({ today: 2.5 }))).toContain('less than today’s 2.5');
    expect(words(band({ today: 0.4 }))).toContain('more than today’s 0.4');
    expect(words(band({ today: -0.8 }))).toContain('the other way round today');
    expect(words(band({ wished: 0.5 }))).toContain('more than the 0.5 wished');
    expect(words(band({ wished: 1 }), [band()])).toContain('as wished');
  });

  it('between two areas is told once, at the lighter one, and names the other', () => {
    const between = band({ darker: 'nape/lengths', today: 1.2 });
    const [line] = bandLines(plan([between]), crown);
    expect(line?.words).toBe('A band: lengths 1.2 levels lighter than nape, lengths; as today.');
    expect(line?.atCm).toBeUndefined();
    expect(bandLines(plan([between]), nape)).toEqual([]);
  });

  it('speaks each language with its figures', async () => {
    await setLanguage('de');
    expect(words(band({ levels: 1 }))).toContain('1 Tonhöhe heller');
    expect(words(band({ today: 2.5 }))).toContain('2,5');
  });
});
