/**
 * An answer on its way to the page: JSON text, its zones one by one. What a zone says as it did in an answer the page has is
 * neither copied nor read again.
 */
export interface Parcel {
  readonly text: string;
  readonly zones?: readonly PackedZone[];
  /** Numbers the answers that have zones. */
  readonly nth?: number;
}

/** A zone as text; or as its place in the answer the page has, with the text of those of its fields that say otherwise there. */
export type PackedZone = string | number | { readonly like: number; readonly but: string };

/** The zones of an answer that the page has. */
export interface Kept {
  readonly nth: number;
  readonly zones: readonly unknown[];
}

/** The texts of a zone's fields, by their names. */
type Fields = ReadonlyMap<string, string>;

/** Numbers of answers. Page and worker each count from somewhere else, so that neither takes the other's answer for its own. */
let last = Math.floor(Math.random() * 2 ** 40);
const REMEMBERED = 3;
const sent = new Map<string, { nth: number; zones: readonly Fields[] }[]>();

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const fieldsOf = (zone: object): Fields =>
  new Map(Object.entries(zone).map(([name, value]) => [name, JSON.stringify(value)]));

const textOf = (fields: Iterable<readonly [string, string]>): string =>
  `{${Array.from(fields, ([name, text]) => `${JSON.stringify(name)}:${text}`).join(',')}}`;

/** Like the zone of the same name before, as far as it is. */
function packZone(zone: Fields, there: readonly Fields[]): PackedZone {
  const place = there.findIndex((other) => other.get('zone') === zone.get('zone'));
  const before = there[place];
  if (!before || [...before.keys()].some((name) => !zone.has(name))) return textOf(zone);
  const changed = [...zone].filter(([name, text]) => before.get(name) !== text);
  return changed.length === 0 ? place : { like: place, but: textOf(changed) };
}

/** Packs the answer to a question of this kind for a page that has answer `has` to it. */
export function pack(text: string, kind: string, has?: number): Parcel {
  let answer: unknown;
  try {
    answer = text ? JSON.parse(text) : undefined;
  } catch {
    return { text }; // whoever reads it finds out
  }
  const list = (answer as { zones?: unknown } | undefined)?.zones;
  if (!Array.isArray(list) || !list.every(isObject)) return { text };
  const zones = list.map(fieldsOf);
  const before = sent.get(kind) ?? [];
  const there = before.find(({ nth }) => nth === has)?.zones ?? [];
  const nth = ++last;
  sent.set(kind, [{ nth, zones }, ...before].slice(0, REMEMBERED));
  return {
    text: JSON.stringify({ ...(answer as object), zones: [] }),
    zones: zones.map((zone) => packZone(zone, there)),
    nth,
  };
}

/**
 * The answer again, and its zones to be kept; those that say what they said in `kept`, the answer it was packed for, are the
 * same objects, and so is each of their fields that does. Throws SyntaxError for text that is no JSON.
 */
export function unpack({ text, zones, nth }: Parcel, kept?: Kept): { answer: unknown; kept?: Kept } {
  const answer: unknown = text ? JSON.parse(text) : undefined;
  if (!zones || nth === undefined) return { answer, kept };
  const read = zones.map((zone): unknown => {
    if (typeof zone === 'number') return kept?.zones[zone];
    if (typeof zone === 'string') return JSON.parse(zone);
    return { ...(kept?.zones[zone.like] as object), ...(JSON.parse(zone.but) as object) };
  });
  return { answer: { ...(answer as object), zones: read }, kept: { nth, zones: read } };
}
