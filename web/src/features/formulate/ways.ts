import type { AlternativeView, BowlView, RouteView } from '../../api/types';
import { number } from '../../i18n/format';
import { isKey, t } from '../../i18n/index.svelte';

/** Another way than the plan's: one set of bowls, or several steps and visits. */
export type Way = AlternativeView | RouteView;

/** What goes on the hair today on this way, each bowl with its step. */
export const todaysBowls = (way: Way): readonly BowlView[] =>
  'visits' in way ? (way.visits[0]?.steps.flatMap((step) => step.bowls) ?? []) : way.bowls;

export const nameOf = (way: Way): string => ('visits' in way ? routeWords(way.kind) : wayWords(way.axis));

/** A way over several steps in plain words. */
export function routeWords(kind: string): string {
  const key = `route.${kind}`;
  return isKey(key) ? t(key as 'route.lighten') : kind;
}

/** An axis in plain words. */
export function wayWords(axis: string): string {
  const key = `ways.${axis}`;
  return isKey(key) ? t(key as 'ways.other') : t('ways.other');
}

/** How much worse than the plan, in levels: words first, then the figure. Below 0 it is nearer to the wish. */
export function worseWords(levels: number): string {
  if (levels < -0.005) return t('ways.nearer', number(-levels, 2));
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
