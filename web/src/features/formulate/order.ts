import type { PlanAnswer, Problem } from '../../api/types';
import { joined, zoneWords } from '../../visit/words';

/** Why zones go on in their order, each reason once, with the minutes that decided and whose they are. */
export function orderOf(plan: PlanAnswer): Problem[] {
  const steps = plan.timeline.order.filter((step) => step.reason);
  const minutes = (step: (typeof steps)[number]) => String(Math.round(step.needs_min));
  const same = (a: (typeof steps)[number], b: (typeof steps)[number]) =>
    a.reason === b.reason && (!a.reason.startsWith('needs_') || minutes(a) === minutes(b));
  return steps
    .filter((step, index) => steps.findIndex((one) => same(one, step)) === index)
    .map((step) => {
      const zones = new Set(steps.filter((one) => same(one, step)).map((one) => zoneWords(one.zone)));
      return {
        code: step.reason,
        path: '',
        params: { minutes: minutes(step), zones: joined([...zones]) },
      };
    });
}
