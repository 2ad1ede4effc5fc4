import type { RouteView } from '../../api/types';
import { t } from '../../i18n/index.svelte';
import { notify } from '../../ui/toasts.svelte';
import { ownBowl, type Work } from '../../visit/work.svelte';
import { nameOf, todaysBowls } from './ways';

/** Today's steps of a way over several steps become the plan; a note offers the way back. */
export function takeRoute(work: Work, route: RouteView): void {
  const undo = work.tryBowls(todaysBowls(route).map(ownBowl), route);
  notify(t('route.taken', nameOf(route)), undo);
}
