import type { Head, Running, ShelfAnswer, TimelineTask } from '../api/types';
import { zoneId } from './head';

const whats = ['lighten', 'tone', 'colour'] as const;
const wheres = ['packets', 'regrowth', 'lengths'] as const;
export type Technique = `${(typeof whats)[number]}-${(typeof wheres)[number]}`;
export const techniques: readonly Technique[] = whats.flatMap((what) =>
  wheres.map((where) => `${what}-${where}` as const),
);

/** What hands do here, as a note is written for it; undefined for what is no laying on, or not known yet. */
export function techniqueOf(
  task: TimelineTask,
  running: Running,
  head: Head,
  shelf: ShelfAnswer | undefined,
): Technique | undefined {
  if (task.kind !== 'apply') return undefined;
  const range = running.bowls.find((bowl) => bowl.label === task.bowl)?.range;
  const cls = shelf?.ranges.find((one) => one.id === range)?.cls;
  const found = head.areas
    .flatMap((area) => area.spans.map((span, nth) => ({ area, span, nth })))
    .find(({ area, span }) => zoneId(area, span) === task.zone);
  if (!cls || !found) return undefined;
  const what = cls === 'lightener' || cls === 'high_lift' ? 'lighten' : cls === 'demi' ? 'tone' : 'colour';
  const atScalp = found.nth === 0 && (found.span.from_cm ?? 0) === 0;
  return `${what}-${found.area.woven ? 'packets' : atScalp ? 'regrowth' : 'lengths'}`;
}
