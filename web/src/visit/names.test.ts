import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { setLanguage } from '../i18n/index.svelte';
import { clientName } from './names';

const folder = '../knowledge/demo/visits/';
const titles = readdirSync(folder)
  .filter((file) => file.endsWith('.json'))
  .map((file) => (JSON.parse(readFileSync(folder + file, 'utf8')) as { client: string }).client);

afterEach(() => setLanguage('en'));

describe('names of visits', () => {
  it('gives the title of every demo visit in each language, as it is in English', async () => {
    expect(titles.length).toBeGreaterThanOrEqual(13);
    for (const title of titles) expect(clientName(title)).toBe(title);
    for (const language of ['de', 'fr', 'es'] as const) {
      await setLanguage(language);
      for (const title of titles) expect(clientName(title), language).not.toMatch(/invented/);
    }
  });

  it('leaves a label of the salon as it was written', async () => {
    await setLanguage('de');
    expect(clientName('A. B.')).toBe('A. B.');
    expect(clientName('Somebody (invented)')).toBe('Somebody (invented)');
    expect(clientName('')).toBe('Ohne Bezeichnung');
  });
});
