import type { PlanAnswer, Timeline } from '../../api/types';
import { t } from '../../i18n/index.svelte';
import type { Lane } from '../../ui/timeline';
import { known } from '../../visit/names';
import { lanesOf } from '../formulate';

/** Hands and bowls of the running clock over time. */
export const runningLanes = (timeline: Timeline): Lane[] =>
  lanesOf({ timeline } as PlanAnswer, {
    person: (id) => known('person', id),
    bowl: (label) => t('plan.bowl', label),
    develops: (label) => t('plan.develops', label),
    kind: (task) => t(`task.${task.kind}`),
    task: (task) => {
      const what = t(`task.${task.kind}`);
      return task.bowl ? `${what} ${task.bowl}` : what;
    },
  });
