import type { LearnedHere, LearnedWord } from '../api/learned';
import { number } from '../i18n/format';
import { isKey, t } from '../i18n/index.svelte';

/** Moved by less, a zone is not worth a line: no eye tells it. */
const LEAST_LEVELS = 0.2;

/** Zones that results move, by so much that it shows. */
export const movedBy = (here: LearnedHere | undefined) =>
  (here?.zones ?? []).filter((zone) => Math.abs(zone.expected - zone.untaught) >= LEAST_LEVELS);

/** What was learned, in a sentence: whose, what, by how many levels; ranges by their names where those are known. */
export function lineOf(word: LearnedWord, names: Readonly<Record<string, string>> = {}): string {
  const { whose = '', levels = '0', id = '' } = word.params;
  const who = `learned.of_${whose}`;
  const key = `learned.${word.code.replace('learned_', '')}`;
  if (!isKey(who) || !isKey(key)) return t('problem.unknown', word.code);
  // A range without a name is told by its own id, without that of its shelf.
  const range = id.split('/').pop() ?? id;
  const name = who === 'learned.of_range' ? t(who, names[range] ?? range) : t(who as 'learned.of_person');
  return t('ui.said', name, t(key as 'learned.deeper', number(Number(levels), 1)));
}
