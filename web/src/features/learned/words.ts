import type { LearnedWord } from '../../api/learned';
import { number } from '../../i18n/format';
import { isKey, t } from '../../i18n/index.svelte';

/** What was learned, in a sentence: whose, what, by how many levels. */
export function lineOf(word: LearnedWord): string {
  const { whose = '', levels = '0', id = '' } = word.params;
  const who = `learned.of_${whose}`;
  const key = `learned.${word.code.replace('learned_', '')}`;
  if (!isKey(who) || !isKey(key)) return t('problem.unknown', word.code);
  // A range is told by its own id, without that of its shelf.
  const name = who === 'learned.of_range' ? t(who, id.split('/').pop() ?? id) : t(who as 'learned.of_person');
  return t('ui.said', name, t(key as 'learned.deeper', number(Number(levels), 1)));
}
