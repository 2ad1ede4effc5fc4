/**
 * An answer on its way to the page: JSON text, its zones one by one. What it, or a zone, says as it did in an answer the page
 * has is neither copied nor read again.
 */
export interface Parcel {
  readonly text: string;
  /** The text holds only those fields that say otherwise than the answer the page has. */
  readonly like?: true;
  readonly zones?: readonly PackedZone[];
  /** Numbers the answers that have zones. */
  readonly nth?: number;
}

/** A zone as text; or as its place in the answer the page has, with the text of those of its fields that say otherwise there. */
export type PackedZone = string | number | { readonly like: number; readonly but: string };

/** An answer that the page has, and its zones. */
export interface Kept {
  readonly nth: number;
  readonly answer: object;
  readonly zones: readonly unknown[];
}

/** The texts of the fields of a zone or an answer, by their names. */
type Fields = ReadonlyMap<string, string>;

/** Numbers of answers. Page and worker each count from somewhere else, so that neither takes the other's answer for its own. */
let last = Math.floor(Math.random() * 2 ** 40);
const REMEMBERED = 3;
const sent = new Map<string, { nth: number; whole: Fields; zones: readonly Fields[] }[]>();

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const fieldsOf = (zone: object): Fields =>
  new Map(Object.entries(zone).map(([name, value]) => [name, JSON.stringify(value)]));

const textOf = (fields: Iterable<readonly [string, string]>): string =>
  `{${Array.from(fields, ([name, text]) => `${JSON.stringify(name)}:${text}`).join(',')}}`;

/** The fields that say otherwise than before; undefined where that cannot be told by them alone. */
function changed(now: Fields, before: Fields | undefined): [string, string][] | undefined {
  if (!before || [...before.keys()].some((name) => !now.has(name))) return undefined;
  return [...now].filter(([name, text]) => before.get(name) !== text);
}

/** Like the zone of the same name before, as far as it is. */
function packZone(zone: Fields, there: readonly Fields[]): PackedZone {
  const place = there.findIndex((other) => other.get('zone') === zone.get('zone'));
  const but = changed(zone, there[place]);
  if (!but) return textOf(zone);
  return but.length === 0 ? place : { like: place, but: textOf(but) };
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
  const whole = fieldsOf({ ...(answer as object), zones: [] });
  const zones = list.map(fieldsOf);
  const before = sent.get(kind) ?? [];
  const there = before.find(({ nth }) => nth === has);
  const nth = ++last;
  sent.set(kind, [{ nth, whole, zones }, ...before].slice(0, REMEMBERED));
  const but = changed(whole, there?.whole);
  return {
    text: textOf(but ?? whole),
    ...(but ? { like: true } : {}),
    zones: zones.map((zone) => packZone(zone, there?.zones ?? [])),
    nth,
  };
}

/**
 * The answer again, to be kept; of its fields, its zones and their fields those that say what they said in `kept`, the answer it
 * was packed for, are the same objects. Throws SyntaxError for text that is no JSON.
 */
export function unpack({ text, like, zones, nth }: Parcel, kept?: Kept): { answer: unknown; kept?: Kept } {
  const said: unknown = text ? JSON.parse(text) : undefined;
  if (!zones || nth === undefined) return { answer: said, kept };
  const read = zones.map((zone): unknown => {
    if (typeof zone === 'number') return kept?.zones[zone];
    if (typeof zone === 'string') return JSON.parse(zone);
    return { ...(kept?.zones[zone.like] as object), ...(JSON.parse(zone.but) as object) };
  });
  const answer = { ...(like && kept?.answer), ...(said as object), zones: read };
  return { answer, kept: { nth, answer, zones: read } };
}
