import { known } from './names';
import { areaName } from './words';

/** Zones "area/span" grouped for a title: each span with its areas; areas empty when it is all of them. */
export function groupZones(
  zones: readonly string[],
  all: readonly string[],
): { span: string; areas: string[] }[] {
  const spans = [...new Set(zones.map((zone) => zone.split('/')[1] ?? ''))];
  return spans.map((span) => {
    const mine = zones.filter((zone) => zone.endsWith(`/${span}`)).map((zone) => zone.split('/')[0] ?? '');
    const there = all.filter((zone) => zone.endsWith(`/${span}`));
    return { span, areas: mine.length === there.length ? [] : mine };
  });
}

/** Where a bowl goes, in words: each span with its areas, a span of every area by its name alone. */
export function whereWords(zones: readonly string[], all: readonly string[]): string {
  return groupZones(zones, all)
    .map(({ span, areas }) =>
      areas.length ? `${known('span', span)}: ${areas.map(areaName).join(', ')}` : known('span', span),
    )
    .join(' · ');
}
