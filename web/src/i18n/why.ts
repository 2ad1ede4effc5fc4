import type { Problem, Visit } from '../api/types';
import { isKey, t } from './index.svelte';
import { problemLine } from './problems';

/** The sentence of a reason; a reason that is worded as a problem is shown as that. */
export function whyLine(reason: Problem, visit: Visit): string {
  // A ceiling names the rule that keeps a stronger bowl away.
  if (reason.code === 'ceiling')
    return whyLine({ ...reason, code: reason.params.rule ?? '?', params: {} }, visit);
  const key = `why.${reason.code}`;
  return isKey(key) ? t(key as 'why.warmth_expected', reason.params) : problemLine(reason, visit);
}
