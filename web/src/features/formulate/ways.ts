import type { AlternativeView, BowlView, PlanAnswer, RouteView } from '../../api/types';
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

/** What a way over several steps gains on the bowls of the plan, in words. */
export function gainWords(plan: PlanAnswer, route: RouteView): string {
  if (plan.bowls.length === 0) return t('route.no_bowl_does');
  const levels = plan.report.objective - route.objective;
  return levels > 0.05 ? t('route.nearer', number(levels, 1)) : t('route.no_nearer');
}

/** An axis in plain words. */
export function wayWords(axis: string): string {
  const key = `ways.${axis}`;
  return isKey(key) ? t(key as 'ways.other') : t('ways.other');
}

/** How much worse than the plan, in words; below 0 it is nearer to the target. */
export function worse(levels: number): string {
  if (levels < -0.005) return t('ways.nearer', number(-levels, 2));
  const off = Math.max(levels, 0);
  return t(
    off < 0.1
      ? 'ways.same'
      : off < 0.375
        ? 'ways.quarter'
        : off < 0.75
          ? 'ways.half'
          : off < 1.25
            ? 'ways.one'
            : 'ways.more',
  );
}

/** The same with its figure in levels: for who asks. */
export const worseWords = (levels: number): string =>
  levels < -0.005 ? worse(levels) : t('ways.figure', worse(levels), number(Math.max(levels, 0), 2));
