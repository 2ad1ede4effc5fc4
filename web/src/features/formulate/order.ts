import type { PlanAnswer, Problem } from '../../api/types';

/** Why zones go on in their order, each reason once, with the minutes that decided. */
export function orderOf(plan: PlanAnswer): Problem[] {
  const all = plan.timeline.order
    .filter((step) => step.reason)
    .map((step) => ({
      code: step.reason,
      path: '',
      params: { minutes: String(Math.round(step.needs_min)) },
    }));
  const same = (a: Problem, b: Problem) =>
    a.code === b.code && (!a.code.startsWith('needs_') || a.params.minutes === b.params.minutes);
  return all.filter((why, index) => all.findIndex((one) => same(one, why)) === index);
}
