import type { Tone } from '../../api/types';
import { t } from '../../i18n/index.svelte';
import type { Wish } from '../../visit/aims';
import { tones, wholeLevels } from '../../visit/tones';
import { half } from '../../visit/words';

/** A target said in words, and the words that nothing is made of. */
export interface Said {
  wish: Wish | undefined;
  unknown: string[];
}

const folded = (text: string) =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .replace(/\bblonde\b/g, 'blond')
    .replace(/½/g, '.5')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/[^\p{L}\d.]+/gu, ' ')
    .trim();

/** The trade's word for a whole level, as "light brown". */
export const depthWord = (level: number) => t(`depth.${level as 1}`);

/** What "violet-ash brown", "7 gold" or "copper" ask for; without a depth, today's. The first of two tones leads. */
export function said(text: string, today: number): Said {
  let rest = ` ${folded(text)} `;
  let level: number | undefined;
  const depths = wholeLevels
    .map((of) => [of, ` ${folded(depthWord(of))} `] as const)
    .sort((a, b) => b[1].length - a[1].length);
  for (const [of, word] of depths)
    if (level === undefined && rest.includes(word)) {
      level = of;
      rest = rest.replace(word, ' ');
    }
  const words = new Map<string, Tone>(tones.map((tone) => [folded(t(`tone.${tone}`)), tone]));
  const any = [...words.keys()].sort((a, b) => b.length - a.length).join('|');
  const token = new RegExp(`^(?:${any})+(?:e|s|es)?$`);
  const found: Tone[] = [];
  const unknown: string[] = [];
  for (const word of rest.split(' ').filter(Boolean)) {
    const asNumber = Number(word);
    if (level === undefined && asNumber >= 1 && asNumber <= 10) level = half(asNumber);
    else if (token.test(word))
      found.push(...[...word.matchAll(new RegExp(any, 'g'))].map(([w]) => words.get(w)!));
    else unknown.push(word);
  }
  const [tone, second, ...more] = [...new Set(found)];
  unknown.push(...more.map((other) => t(`tone.${other}`)));
  if (level === undefined && !tone) return { wish: undefined, unknown };
  return {
    wish: {
      level: level ?? half(today),
      tone: tone ?? 'natural',
      ...(second ? { second_tone: second } : {}),
    },
    unknown,
  };
}
