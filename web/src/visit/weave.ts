import type { Area, Head, Span } from '../api/types';
import { freeName, moveEnd, withArea } from './head';
import { LONGEST } from './places';
import { readSpan, writeSpan, type Reading } from './reading';

/** Common practice: product in packets stays off the scalp by about this much, cm. */
const OFF_THE_SCALP = 0.5;
/** The shortest span, cm. */
const SHORTEST = 0.1;
const USUAL_SHARE = 0.3;
const USUAL_WIDTH = 4;
/** Percent of an area's hair that packets may take, and the steps in which it is read. */
export const LEAST_SHARE = 5;
const MOST_SHARE = 90;
const LEAST_BETWEEN = 5;
export const SHARE_STEP = 5;

/** Packets taken out of this area, in their order. */
export const packetsOf = (head: Head, id: string): Area[] =>
  head.areas.filter((area) => area.woven?.from === id);

/** The area whose scalp this hair stands on: its own, or the one that its packets come out of. */
export const groundOf = (head: Head, area: Area): Area =>
  (area.woven && head.areas.find((a) => a.id === area.woven?.from)) ?? area;

const nameFor = (of: string) => (of.length > LONGEST - 12 ? 'packets' : `${of} packets`);

/** The area and number that a name as packets get it says: "top packets", "top packets 2"; undefined for other names. */
export function saidOf(name: string): { of: string; nth: string } | undefined {
  const found = /^(.+) packets(?: (\d+))?$/.exec(name);
  return found ? { of: found[1]!, nth: found[2] ?? '' } : undefined;
}

/** Copies of the packets of `from` for an area that is called `to` now; names that are used grow `taken`. */
export function following(packets: readonly Area[], from: string, to: string, taken: string[]): Area[] {
  return packets.map((area) => {
    const id = freeName(saidOf(area.id)?.of === from ? nameFor(to) : area.id, taken);
    taken.push(id);
    return { ...structuredClone(area), id, woven: { ...area.woven!, from: to } };
  });
}

/** The largest share in percent that packets may have of `from`, so that some hair stays between; `but` = themselves. */
export function mostShare(head: Head, from: string, but?: string): number {
  const others = packetsOf(head, from).filter((area) => area.id !== but);
  const left = others.reduce((rest, area) => rest - 100 * area.woven!.share, 100 - LEAST_BETWEEN);
  return Math.min(Math.floor(left / SHARE_STEP + 1e-6) * SHARE_STEP, MOST_SHARE);
}

const beginsIn = (span: Span): boolean => span.to_cm >= OFF_THE_SCALP + SHORTEST;

/** The spans of an area as its packets begin them: a little off the scalp. */
const packetSpans = (area: Area): Span[] =>
  area.spans.filter(beginsIn).map((span) => ({
    ...structuredClone(span),
    from_cm: Math.max(span.from_cm ?? 0, OFF_THE_SCALP),
  }));

/** True when packets can be taken out of this area: it is not woven, long enough, and has hair left to take. */
export const canWeave = (head: Head, area: Area): boolean =>
  !area.woven && area.spans.some(beginsIn) && mostShare(head, area.id) >= LEAST_SHARE;

/** A border of this area moved to `cm`; packets that had theirs in the same place go along. */
export function moveBorder(head: Head, id: string, index: number, cm: number): Head {
  const before = head.areas.find((area) => area.id === id)?.spans[index]?.to_cm;
  const moved = withArea(head, id, (area) => moveEnd(area, index, cm));
  const after = moved.areas.find((area) => area.id === id)?.spans[index]?.to_cm;
  if (before === undefined || after === undefined) return moved;
  return packetsOf(head, id).reduce((all, packets) => {
    const theirs = packets.spans.findIndex((span) => span.to_cm === before);
    return theirs < 0 ? all : withArea(all, packets.id, (area) => moveEnd(area, theirs, after));
  }, moved);
}

/** New packets right after their area and those it has already; unchanged (no id) where none can be taken. */
export function takeUp(head: Head, from: string, share = USUAL_SHARE, width = USUAL_WIDTH) {
  const area = head.areas.find((a) => a.id === from);
  if (!area || !canWeave(head, area)) return { head, id: undefined };
  const id = freeName(
    nameFor(from),
    head.areas.map((a) => a.id),
  );
  const most = mostShare(head, from) / 100;
  const packets: Area = {
    id,
    ...(area.kind ? { kind: area.kind } : {}),
    woven: { from, share: Math.min(share, most), width_mm: width },
    spans: packetSpans(area),
  };
  const last = packetsOf(head, from).at(-1) ?? area;
  return { head: { ...head, areas: head.areas.flatMap((a) => (a === last ? [a, packets] : [a])) }, id };
}

/** The reading of the hair between, once strands of this share are no longer counted in it. */
function between(reading: Reading, name: string, share: number): Reading {
  const rest = Math.max(1 - share, 1e-6);
  const strands = reading.strands
    .filter((s) => s.name !== name)
    .map((s) => ({ ...s, share: Math.min(s.share / rest, 1) }));
  return { ...reading, white: Math.min(Math.round(reading.white / rest), 100), strands };
}

/**
 * Strands of another colour in one span become packets with bowls of their own: share and width stay, their colour is
 * read in that span, the other spans read as the area does. The hair between keeps its own colours.
 */
export function strandsTakenUp(head: Head, from: string, spanId: string, name: string) {
  const span = head.areas.find((a) => a.id === from)?.spans.find((s) => s.id === spanId);
  const reading = span && readSpan(span);
  const strands = reading?.strands.find((s) => s.name === name);
  if (!reading || !strands) return { head, id: undefined };
  const next = takeUp(head, from, strands.share, strands.packet_mm);
  const packets = next.head.areas.find((a) => a.id === next.id);
  if (!packets?.spans.some((s) => s.id === spanId)) return { head, id: undefined };
  const { level, tone, origin, share } = strands;
  const natural = reading.origin === 'natural' ? reading.level : reading.naturalLevel;
  const own: Reading = { level, tone, white: 0, origin, naturalLevel: natural, doubt: {}, strands: [] };
  const read = (area: Area, how: (s: Span) => Span): Area => ({
    ...area,
    spans: area.spans.map((s) => (s.id === spanId ? how(s) : s)),
  });
  const there = withArea(next.head, from, (a) => read(a, (s) => writeSpan(s, between(reading, name, share))));
  return { head: withArea(there, packets.id, (a) => read(a, (s) => writeSpan(s, own))), id: packets.id };
}

/** Where the first span begins, cm from the scalp. */
export function moveStart(area: Area, cm: number): Area {
  const [first, ...rest] = area.spans;
  if (!first) return area;
  const from = Math.round(Math.min(Math.max(cm, 0), first.to_cm - SHORTEST) * 10) / 10;
  return { ...area, spans: [{ ...first, from_cm: from }, ...rest] };
}
