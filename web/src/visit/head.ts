import type { Area, AreaKind, Head, Span, Visit } from '../api/types';
import { changed, readSpan, writeSpan } from './reading';

export const areaKinds: readonly AreaKind[] = [
  'front_hairline',
  'temples',
  'top',
  'crown',
  'sides',
  'nape',
  'other',
];

const tidy = (cm: number) => Math.round(cm * 10) / 10;

/** "area/span", the name of a zone everywhere. */
export const zoneId = (area: Area, span: Span) => `${area.id}/${span.id}`;

/** A head nobody has read yet: five areas, regrowth and lengths, every number waiting to be changed. */
export function newHead(): Head {
  const kinds: AreaKind[] = ['front_hairline', 'top', 'crown', 'sides', 'nape'];
  return {
    areas: kinds.map((kind) => ({
      id: kind.replace('_', ' '),
      kind,
      spans: [
        { id: 'regrowth', from_cm: 0, to_cm: 1.5, level: 5, white_percent: 0 },
        { id: 'lengths', from_cm: 1.5, to_cm: 20, level: 5, white_percent: 0 },
      ],
    })),
  };
}

/** `shelf` as a visit names it: the version that it is planned on, whatever is saved later. */
export function newVisit(client: string, date: string, shelf = 'demo'): Visit {
  return {
    schema: 'strandline.visit/1',
    client,
    date,
    head: newHead(),
    aims: [],
    shelf,
    policy: 'house',
  };
}

export const lengthOf = (area: Area) => area.spans.at(-1)?.to_cm ?? 0;

/** Longest hair that can be planned for. */
const LONGEST_CM = 200;

/** Where span `index` may end, in cm: inside its neighbours, by millimetres; the tip in halves. */
export function endRange(area: Area, index: number): { min: number; max: number; step: number } {
  const from = area.spans[index]?.from_cm ?? 0;
  const next = area.spans[index + 1];
  return next
    ? { min: tidy(from + 0.1), max: tidy(next.to_cm - 0.1), step: 0.1 }
    : { min: Math.ceil((from + 0.1) * 2) / 2, max: LONGEST_CM, step: 0.5 };
}

/** Where span `index` ends may move between its neighbours; the last one is the tip. */
export function moveEnd(area: Area, index: number, cm: number): Area {
  const spans = area.spans.map((span) => ({ ...span }));
  const span = spans[index];
  if (!span) return area;
  const { max } = endRange(area, index);
  const next = spans[index + 1];
  span.to_cm = tidy(Math.min(Math.max(cm, (span.from_cm ?? 0) + 0.1), max));
  if (next) next.from_cm = span.to_cm;
  return { ...area, spans };
}

/** Splits span `index` in two at its middle; the new one keeps the reading. */
export function splitSpan(area: Area, index: number, id: string): Area {
  const span = area.spans[index];
  if (!span || span.to_cm - (span.from_cm ?? 0) < 0.4) return area;
  const middle = tidy(((span.from_cm ?? 0) + span.to_cm) / 2);
  const spans = [...area.spans];
  spans.splice(index, 1, { ...span, to_cm: middle }, { ...structuredClone(span), id, from_cm: middle });
  return { ...area, spans };
}

/** Removes span `index`; its neighbour towards the scalp (or the tip) takes its length. */
export function removeSpan(area: Area, index: number): Area {
  const gone = area.spans[index];
  if (!gone || area.spans.length < 2) return area;
  const spans = area.spans.filter((_, i) => i !== index).map((span) => ({ ...span }));
  if (index > 0) spans[index - 1]!.to_cm = gone.to_cm;
  else spans[0]!.from_cm = gone.from_cm;
  return { ...area, spans };
}

/** A name that no area (or span) has yet: "sides", "sides 2", "sides 3" … */
export function freeName(wish: string, taken: readonly string[]): string {
  if (!taken.includes(wish)) return wish;
  let n = 2;
  while (taken.includes(`${wish} ${n}`)) n++;
  return `${wish} ${n}`;
}

/**
 * The reading of `from` copied to every other area, span by span; each area keeps its length where it reaches the last
 * span. Packets keep theirs: they are read apart.
 */
export function copyReading(head: Head, from: string): Head {
  const source = head.areas.find((area) => area.id === from);
  if (!source || source.woven) return head;
  return {
    ...head,
    areas: head.areas.map((area) => {
      if (area.id === from || area.woven) return area;
      const spans = source.spans.map((span) => structuredClone(span));
      const last = spans.at(-1)!;
      if (lengthOf(area) > (last.from_cm ?? 0)) last.to_cm = lengthOf(area);
      return { ...area, spans };
    }),
  };
}

/** Another visit's head with `cm` of new hair at the scalp: older spans move outwards, the first one grows; packets stay off the scalp. */
export function grown(head: Head, cm: number): Head {
  if (cm <= 0) return head;
  return {
    ...head,
    areas: head.areas.map((area) => ({
      ...area,
      spans: area.spans.map((span, index) => ({
        ...span,
        from_cm: index > 0 ? tidy((span.from_cm ?? 0) + cm) : area.woven ? span.from_cm : 0,
        to_cm: tidy(span.to_cm + cm),
      })),
    })),
  };
}

/** `head` with one area replaced. */
export function withArea(head: Head, id: string, change: (area: Area) => Area): Head {
  return { ...head, areas: head.areas.map((area) => (area.id === id ? change(area) : area)) };
}

/** `head` with the reading of one span changed. */
export function withReading(
  head: Head,
  area: string,
  span: string,
  change: Partial<ReturnType<typeof readSpan>>,
): Head {
  return withArea(head, area, (a) => ({
    ...a,
    spans: a.spans.map((s) => (s.id === span ? writeSpan(s, changed(readSpan(s), change)) : s)),
  }));
}

/** The least that is left of hair that was cut, in cm. */
const STUBBLE_CM = 0.5;

/** The same head with so many centimetres cut off the tips. */
export function trimmed(head: Head, cm: number): Head {
  if (cm <= 0) return head;
  return {
    ...head,
    areas: head.areas.map((area) => {
      const first = area.spans[0]?.from_cm ?? 0;
      const length = tidy(Math.max(lengthOf(area) - cm, first + STUBBLE_CM));
      const spans = area.spans.filter((span) => (span.from_cm ?? 0) < length);
      return { ...area, spans: spans.map((span) => ({ ...span, to_cm: Math.min(span.to_cm, length) })) };
    }),
  };
}
