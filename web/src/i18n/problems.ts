import type { Problem, Visit } from '../api/types';
import { known } from '../visit/names';
import { areaName, zoneWords } from '../visit/words';
import { isKey, t } from './index.svelte';

/** The sentence of one code, worded as a problem or as a reason; a code without one is shown as itself, never hidden. */
export function problemWords(problem: Problem): string {
  const key = ['problem', 'why'].map((kind) => `${kind}.${problem.code}`).find(isKey);
  if (!key) return t('problem.unknown', problem.code);
  return t(key as 'problem.too_long', placed(problem.params));
}

/** Parameters with the places in them as they are called here; a place that stands for more of them says so. */
export function placed(params: Problem['params']): Problem['params'] {
  const said = { ...params };
  for (const key of ['zone', 'lighter', 'darker'])
    if (said[key]?.includes('/')) said[key] = zoneWords(said[key]);
  const more = Number(params.zones ?? 1) - 1;
  if (said.zone && more > 0) said.zone = t('ui.most_here', said.zone, more);
  return said;
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
