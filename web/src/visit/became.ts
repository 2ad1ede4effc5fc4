import type { Tone } from '../api/types';
import { t } from '../i18n/index.svelte';
import { whereWords } from './where';
import { depthWords, targetWords } from './words';

/** "blonde (level 7, gold) – regrowth." – a sentence for each colour, as clients say it, with all places that have it. */
export function becameLines(
  zones: readonly { zone: string; level: number; tone: Tone }[],
  all: readonly string[],
): string[] {
  const places = new Map<string, string[]>();
  for (const zone of zones) {
    const words = `${depthWords(zone.level)} (${targetWords(zone)})`;
    places.set(words, [...(places.get(words) ?? []), zone.zone]);
  }
  return [...places].map(([words, where]) => t('care.became', whereWords(where, all), words));
}
