/**
 * An answer on its way to the page: JSON text, its zones one by one. A zone that says what it said in an answer the page
 * has is only its place there, so that it is neither copied nor read again.
 */
export interface Parcel {
  readonly text: string;
  readonly zones?: readonly (string | number)[];
  /** Numbers the answers that have zones. */
  readonly nth?: number;
}

/** The zones of an answer that the page has. */
export interface Kept {
  readonly nth: number;
  readonly zones: readonly unknown[];
}

/** Numbers of answers. Page and worker each count from somewhere else, so that neither takes the other's answer for its own. */
let last = Math.floor(Math.random() * 2 ** 40);
const REMEMBERED = 3;
const sent = new Map<string, { nth: number; texts: readonly string[] }[]>();

/** Packs the answer to a question of this kind for a page that has answer `has` to it. */
export function pack(text: string, kind: string, has?: number): Parcel {
  let answer: unknown;
  try {
    answer = text ? JSON.parse(text) : undefined;
  } catch {
    return { text }; // whoever reads it finds out
  }
  const zones = (answer as { zones?: unknown } | undefined)?.zones;
  if (!Array.isArray(zones)) return { text };
  const texts = zones.map((zone) => JSON.stringify(zone));
  const before = sent.get(kind) ?? [];
  const places = new Map(before.find(({ nth }) => nth === has)?.texts.map((zone, place) => [zone, place]));
  const nth = ++last;
  sent.set(kind, [{ nth, texts }, ...before].slice(0, REMEMBERED));
  return {
    text: JSON.stringify({ ...(answer as object), zones: [] }),
    zones: texts.map((zone) => places.get(zone) ?? zone),
    nth,
  };
}

/**
 * The answer again, and its zones to be kept; those that say what they said in `kept`, the answer it was packed for, are the
 * same objects. Throws SyntaxError for text that is no JSON.
 */
export function unpack({ text, zones, nth }: Parcel, kept?: Kept): { answer: unknown; kept?: Kept } {
  const answer: unknown = text ? JSON.parse(text) : undefined;
  if (!zones || nth === undefined) return { answer, kept };
  const read = zones.map((zone): unknown =>
    typeof zone === 'number' ? kept?.zones[zone] : JSON.parse(zone),
  );
  return { answer: { ...(answer as object), zones: read }, kept: { nth, zones: read } };
}
