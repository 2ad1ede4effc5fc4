import { cleanup } from '@testing-library/svelte';
import { afterEach } from 'vitest';
import { languages, setLanguage, type Language } from './i18n/index.svelte';

afterEach(() => cleanup());

// All words are here before the first test, so that a test changes the language at once; English is spoken.
for (const language of [...(Object.keys(languages) as Language[]), 'en'] as const)
  await setLanguage(language);
localStorage.clear();
