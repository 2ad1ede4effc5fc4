import { known } from '../../visit/picture';
import { areaName } from '../../visit/words';
import { groupZones } from './lanes';

/** Where a bowl goes, in words: each span with its areas, a span of every area by its name alone. */
export function whereWords(zones: readonly string[], all: readonly string[]): string {
  return groupZones(zones, all)
    .map(({ span, areas }) =>
      areas.length ? `${known('span', span)}: ${areas.map(areaName).join(', ')}` : known('span', span),
    )
    .join(' · ');
}
