import type { Area, AreaKind, Head } from '../api/types';
import { freeName } from './head';
import { joinedName, partedNames, type Parting } from './places';
import { following, groundOf, packetsOf } from './weave';

export { withArea } from './head';

const ids = (head: Head) => head.areas.map((area) => area.id);

/** What a document that does not say an area's scalp means, cm². */
const SCALP_UNSAID = 100;
const scalpOf = (area: Area) => area.scalp_cm2 ?? SCALP_UNSAID;

/** A head with areas parted, joined or renamed, the names of those that came of it, and what became of every name. */
export interface Changed {
  head: Head;
  ids: string[];
  /** Names that changed, each with those that took its place; none = gone. */
  became: ReadonlyMap<string, readonly string[]>;
}
const unchanged = (head: Head, id: string): Changed => ({ head, ids: [id], became: new Map() });

/** One area, and the packets that go with it, for another name; `taken` grows by the names used. */
function renamed(head: Head, area: Area, name: string, taken: string[]): Area[] {
  return [
    { ...structuredClone(area), id: name },
    ...following(packetsOf(head, area.id), area.id, name, taken),
  ];
}

/** `head` with an area and its packets replaced by copies of them, a list for each name that takes its place. */
function replaced(head: Head, area: Area, pieces: readonly (readonly Area[])[]): Changed {
  const before = [area, ...packetsOf(head, area.id)];
  return {
    head: {
      ...head,
      areas: head.areas.flatMap((a) => (a === area ? pieces.flat() : before.includes(a) ? [] : [a])),
    },
    ids: pieces.map((piece) => piece[0]!.id),
    became: new Map(before.map((one, i) => [one.id, pieces.map((piece) => piece[i]!.id)])),
  };
}

/**
 * Parts an area: each piece has the reading, an even share of the scalp and packets of its own. Unchanged where it
 * cannot be parted so; packets are not parted.
 */
export function partArea(head: Head, id: string, parting: Parting): Changed {
  const area = head.areas.find((a) => a.id === id);
  const mine = [id, ...packetsOf(head, id).map((a) => a.id)];
  const others = ids(head).filter((other) => !mine.includes(other));
  const wished = parting === 'halves' ? [id, id] : partedNames(id, parting);
  if (!area || area.woven || wished.length < 2) return unchanged(head, id);
  const names = wished.reduce<string[]>((found, n) => [...found, freeName(n, [...others, ...found])], []);
  const taken = [...others, ...names];
  const part = { ...area, scalp_cm2: scalpOf(area) / names.length };
  return replaced(
    head,
    area,
    names.map((name) => renamed(head, part, name, taken)),
  );
}

const spansOf = ({ spans, hair_factor = 1 }: Area) => [spans, hair_factor];
/** All that is read of an area, its packets included. */
const readingOf = (head: Head, area: Area) =>
  JSON.stringify([
    spansOf(area),
    packetsOf(head, area.id).map((p) => [p.woven?.share, p.woven?.width_mm, spansOf(p)]),
  ]);

/** True when these areas are read alike, so that joining them loses nothing. */
export function readAlike(head: Head, chosen: readonly string[]): boolean {
  const areas = head.areas.filter((area) => chosen.includes(area.id));
  return areas.every((area) => readingOf(head, area) === readingOf(head, areas[0]!));
}

/**
 * One area, in the place of the first, with the scalp of all, the reading of `keep` and its packets; those of the others
 * go with their readings. Unchanged for fewer than two.
 */
export function joinAreas(head: Head, chosen: readonly string[], keep: string): Changed {
  const areas = head.areas.filter((area) => chosen.includes(area.id) && !area.woven);
  const kept = areas.find((area) => area.id === keep);
  const first = areas[0];
  if (!kept || !first || areas.length < 2) return unchanged(head, keep);
  const names = areas.map((area) => area.id);
  const gone = head.areas.filter((area) => names.includes(area.id) || names.includes(area.woven?.from ?? ''));
  const taken = ids(head).filter((id) => !gone.some((area) => area.id === id));
  const name = freeName(joinedName(names) ?? first.id, taken);
  taken.push(name);
  const scalp = areas.reduce((sum, area) => sum + scalpOf(area), 0);
  const joined = renamed(head, { ...kept, kind: first.kind, scalp_cm2: scalp }, name, taken);
  const stay = [kept, ...packetsOf(head, keep)];
  return {
    head: {
      ...head,
      areas: head.areas.flatMap((a) => (a === first ? joined : gone.includes(a) ? [] : [a])),
    },
    ids: [name],
    became: new Map(
      gone.map((area) => [area.id, stay.includes(area) ? [joined[stay.indexOf(area)]!.id] : []]),
    ),
  };
}

/** Without an area and the packets that come out of it; the last one stays. */
export function removeArea(head: Head, id: string): Head {
  const areas = head.areas.filter((area) => area.id !== id && area.woven?.from !== id);
  return areas.some((area) => !area.woven) ? { ...head, areas } : head;
}

/** Another name, which its packets follow; refused (unchanged) when it is taken or holds a slash, which joins area and span. */
export function renameArea(head: Head, id: string, name: string): Changed {
  const plain = name.replaceAll('/', ' ').trim();
  const area = head.areas.find((a) => a.id === id);
  if (!area || !plain || ids(head).includes(plain)) return unchanged(head, id);
  const mine = [id, ...packetsOf(head, id).map((a) => a.id)];
  const taken = [...ids(head).filter((other) => !mine.includes(other)), plain];
  return replaced(head, area, [renamed(head, area, plain, taken)]);
}

/** A new area of this kind that starts with the reading of `like`. */
export function addArea(head: Head, kind: AreaKind, like: string): { head: Head; id: string } {
  const chosen = head.areas.find((area) => area.id === like) ?? head.areas[0];
  const model = chosen && groundOf(head, chosen);
  const id = freeName(kind.replace('_', ' '), ids(head));
  if (!model) return { head, id };
  const area: Area = { id, kind, spans: structuredClone(model.spans) };
  return { head: { ...head, areas: [...head.areas, area] }, id };
}
