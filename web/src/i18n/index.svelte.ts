import { en } from './en';
import { de } from './de';
import { es } from './es';
import { fr } from './fr';
import { shownIn } from './shown';
import type { Args, Dictionary, Key } from './types';

export type { Key } from './types';

/** Languages in their own words. */
export const languages = { en: 'English', fr: 'Français', es: 'Español', de: 'Deutsch' } as const;
export type Language = keyof typeof languages;

const dictionaries: Record<Language, Dictionary> = { en, fr, es, de };

const stored = 'strandline.language';

function firstLanguage(): Language {
  const wished = [localStorage.getItem(stored) ?? '', ...navigator.languages.map((tag) => tag.slice(0, 2))];
  return wished.find((tag): tag is Language => tag in languages) ?? 'en';
}

let current = $state<Language>(firstLanguage());

export function language(): Language {
  return current;
}

export function setLanguage(next: Language): void {
  current = next;
  localStorage.setItem(stored, next);
}

/** A sign stays with its word at the end of a line: French sets a space before some, every language here before "%". */
function held(text: string): string {
  const signs = text.replace(/(\d) %/g, '$1\u00a0%');
  return current === 'fr' ? signs.replace(/ ([:;?!»])/g, '\u00a0$1').replace(/« /g, '«\u00a0') : signs;
}

/** The sentence for a key in the chosen language. */
export function t<K extends Key>(key: K, ...args: Args<K>): string {
  const entry = dictionaries[current][key] as string | ((...a: unknown[]) => string);
  return held(typeof entry === 'string' ? entry : entry(...args.map(shownIn)));
}

/** True when `key` is one of the dictionary's keys: for keys built from codes. */
export function isKey(key: string): key is Key {
  return Object.hasOwn(en, key);
}
