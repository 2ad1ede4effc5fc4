import { shownIn } from './shown';
import type { Args, Dictionary, Key } from './types';

export type { Key } from './types';

/** Languages in their own words. */
export const languages = { en: 'English', fr: 'Français', es: 'Español', de: 'Deutsch' } as const;
export type Language = keyof typeof languages;

// Each comes by itself: nobody waits for words of a language that is not shown.
const sources: Record<Language, () => Promise<Dictionary>> = {
  en: async () => (await import('./en')).en,
  fr: async () => (await import('./fr')).fr,
  es: async () => (await import('./es')).es,
  de: async () => (await import('./de')).de,
};
const dictionaries: Partial<Record<Language, Dictionary>> = {};

const stored = 'strandline.language';

function firstLanguage(): Language {
  const wished = [localStorage.getItem(stored) ?? '', ...navigator.languages.map((tag) => tag.slice(0, 2))];
  return wished.find((tag): tag is Language => tag in languages) ?? 'en';
}

let wished = firstLanguage();
let current = $state<Language>(wished);
let words = {} as Dictionary;

export function language(): Language {
  return current;
}

/**
 * Speaks the next language, at once where its words are here, else when they have come; the last one wished counts.
 * Rejects where they do not come: then nothing changes.
 */
export async function setLanguage(next: Language): Promise<void> {
  wished = next;
  const known = dictionaries[next] ?? (dictionaries[next] = await sources[next]());
  if (wished !== next) return;
  words = known;
  current = next;
  localStorage.setItem(stored, next);
}

/** The words of the device's language; before anything is drawn. */
export async function firstWords(): Promise<void> {
  words = dictionaries[current] = await sources[current]();
}

/** A sign stays with its word at the end of a line: French sets a space before some, every language here before "%". */
function held(text: string): string {
  const signs = text.replace(/(\d) %/g, '$1\u00a0%');
  return current === 'fr' ? signs.replace(/ ([:;?!»])/g, '\u00a0$1').replace(/« /g, '«\u00a0') : signs;
}

/** The sentence for a key in the chosen language. */
export function t<K extends Key>(key: K, ...args: Args<K>): string {
  const entry = words[key] as string | ((...a: unknown[]) => string);
  return held(typeof entry === 'string' ? entry : entry(...args.map(shownIn)));
}

/** True when `key` is one of the dictionary's keys: for keys built from codes. */
export function isKey(key: string): key is Key {
  return Object.hasOwn(words, key);
}
