import { number } from '../../i18n/format';
import { isKey, t } from '../../i18n/index.svelte';

/** An axis in plain words. */
export function wayWords(axis: string): string {
  const key = `ways.${axis}`;
  return isKey(key) ? t(key as 'ways.other') : t('ways.other');
}

/** How much worse than the plan, in levels: words first, then the figure. */
export function worseWords(levels: number): string {
  const worse = Math.max(levels, 0);
  const words = t(
    worse < 0.1
      ? 'ways.same'
      : worse < 0.375
        ? 'ways.quarter'
        : worse < 0.75
          ? 'ways.half'
          : worse < 1.25
            ? 'ways.one'
            : 'ways.more',
  );
  return t('ways.figure', words, number(worse, 2));
}
