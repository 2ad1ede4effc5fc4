import type { Problem, Visit } from '../api/types';
import { known } from '../visit/picture';
import { areaName } from '../visit/words';
import { isKey, t } from './index.svelte';

/** The sentence of one code; a code without a sentence is shown as itself, never hidden. */
export function problemWords(problem: Problem): string {
  const key = `problem.${problem.code}`;
  if (!isKey(key)) return t('problem.unknown', problem.code);
  return t(key as 'problem.too_long', problem.params);
}

/** Where on the head a problem is: "crown, regrowth"; empty when it is nowhere in particular. */
export function problemPlace(problem: Problem, visit: Visit): string {
  const [, area, span] = /^\/head\/areas\/(\d+)(?:\/spans\/(\d+))?/.exec(problem.path) ?? [];
  if (area === undefined) return '';
  const found = visit.head.areas[Number(area)];
  const part = span === undefined ? undefined : found?.spans[Number(span)];
  return [found && areaName(found.id), part && known('span', part.id)].filter(Boolean).join(', ');
}

/** Place and sentence. */
export function problemLine(problem: Problem, visit: Visit): string {
  const place = problemPlace(problem, visit);
  return place ? t('ui.said', place, problemWords(problem)) : problemWords(problem);
}
