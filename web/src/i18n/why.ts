import type { Problem, Visit } from '../api/types';
import { strength } from './format';
import { isKey, t } from './index.svelte';
import { placed, problemLine } from './problems';

/** The sentence of a reason; a reason that is worded as a problem is shown as that. */
export function whyLine(reason: Problem, visit: Visit): string {
  // A ceiling names the rule that keeps a stronger bowl away.
  if (reason.code === 'ceiling')
    return whyLine({ ...reason, code: reason.params.rule ?? '?', params: {} }, visit);
  if (isKey(`rule.${reason.code}`)) return t(`rule.${reason.code}` as 'rule.age.ask');
  const key = `why.${reason.code}`;
  if (!isKey(key)) return problemLine(reason, visit);
  const { percent } = reason.params;
  // A developer's is said as the salon says it.
  const params =
    percent === undefined ? reason.params : { ...reason.params, strength: strength(Number(percent)) };
  return t(key as 'why.warmth_expected', placed(params));
}
