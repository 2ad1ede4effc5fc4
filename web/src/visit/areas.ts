import type { Area, AreaKind, Head } from '../api/types';
import { freeName, withArea } from './head';
import { joinedName, partedNames, type Parting } from './places';

export { withArea } from './head';

const ids = (head: Head) => head.areas.map((area) => area.id);

/** What a document that does not say an area's scalp means, cm². */
const SCALP_UNSAID = 100;
const scalpOf = (area: Area) => area.scalp_cm2 ?? SCALP_UNSAID;

/** A head with areas parted or joined, and the names of those that came of it. */
export interface Changed {
  head: Head;
  ids: string[];
}

/** Parts an area: each piece has the reading and an even share of the scalp. Unchanged where it cannot be parted so. */
export function partArea(head: Head, id: string, parting: Parting): Changed {
  const area = head.areas.find((a) => a.id === id);
  const others = ids(head).filter((other) => other !== id);
  const wished = parting === 'halves' ? [id, id] : partedNames(id, parting);
  if (!area || wished.length < 2) return { head, ids: [id] };
  const names = wished.reduce<string[]>((found, n) => [...found, freeName(n, [...others, ...found])], []);
  const pieces = names.map((name) => ({
    ...structuredClone(area),
    id: name,
    scalp_cm2: scalpOf(area) / names.length,
  }));
  return { head: { ...head, areas: head.areas.flatMap((a) => (a === area ? pieces : [a])) }, ids: names };
}

const readingOf = ({ spans, hair_factor = 1 }: Area) => JSON.stringify([spans, hair_factor]);

/** True when these areas are read alike, so that joining them loses nothing. */
export function readAlike(head: Head, chosen: readonly string[]): boolean {
  const areas = head.areas.filter((area) => chosen.includes(area.id));
  return areas.every((area) => readingOf(area) === readingOf(areas[0]!));
}

/** One area, in the place of the first, with the scalp of all and the reading of `keep`. Unchanged for fewer than two. */
export function joinAreas(head: Head, chosen: readonly string[], keep: string): Changed {
  const areas = head.areas.filter((area) => chosen.includes(area.id));
  const kept = areas.find((area) => area.id === keep);
  const first = areas[0];
  if (!kept || !first || areas.length < 2) return { head, ids: [keep] };
  const names = areas.map((area) => area.id);
  const others = ids(head).filter((id) => !names.includes(id));
  const name = freeName(joinedName(names) ?? first.id, others);
  const scalp = areas.reduce((sum, area) => sum + scalpOf(area), 0);
  const joined: Area = { ...structuredClone(kept), id: name, kind: first.kind, scalp_cm2: scalp };
  return {
    head: {
      ...head,
      areas: head.areas.flatMap((a) => (a === first ? [joined] : areas.includes(a) ? [] : [a])),
    },
    ids: [name],
  };
}

export function removeArea(head: Head, id: string): Head {
  return head.areas.length < 2 ? head : { ...head, areas: head.areas.filter((area) => area.id !== id) };
}

/** Another name; refused (unchanged) when it is taken or holds a slash, which joins area and span. */
export function renameArea(head: Head, id: string, name: string): Head {
  const plain = name.replaceAll('/', ' ').trim();
  if (!plain || ids(head).includes(plain)) return head;
  return withArea(head, id, (area) => ({ ...area, id: plain }));
}

/** A new area of this kind that starts with the reading of `like`. */
export function addArea(head: Head, kind: AreaKind, like: string): { head: Head; id: string } {
  const model = head.areas.find((area) => area.id === like) ?? head.areas[0];
  const id = freeName(kind.replace('_', ' '), ids(head));
  if (!model) return { head, id };
  const area: Area = { id, kind, spans: structuredClone(model.spans) };
  return { head: { ...head, areas: [...head.areas, area] }, id };
}
