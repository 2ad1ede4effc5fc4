import type { Area, AreaKind, Head } from '../api/types';
import { freeName, withArea } from './head';

export { withArea } from './head';

const ids = (head: Head) => head.areas.map((area) => area.id);

/** Two areas of half the scalp each, both with the reading; the new one is named after the old. */
export function splitArea(head: Head, id: string): { head: Head; id: string } {
  const at = head.areas.findIndex((area) => area.id === id);
  const area = head.areas[at];
  if (!area) return { head, id };
  const name = freeName(id, ids(head));
  const half = area.scalp_cm2 === undefined ? {} : { scalp_cm2: area.scalp_cm2 / 2 };
  const areas = [...head.areas];
  areas.splice(at, 1, { ...area, ...half }, { ...structuredClone(area), ...half, id: name });
  return { head: { ...head, areas }, id: name };
}

/** `other` becomes part of `id`: its scalp is added, the reading of `id` stays. */
export function mergeAreas(head: Head, id: string, other: string): Head {
  const gone = head.areas.find((area) => area.id === other);
  if (!gone) return head;
  return removeArea(
    withArea(head, id, (area) =>
      area.scalp_cm2 === undefined || gone.scalp_cm2 === undefined
        ? area
        : { ...area, scalp_cm2: area.scalp_cm2 + gone.scalp_cm2 },
    ),
    other,
  );
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
