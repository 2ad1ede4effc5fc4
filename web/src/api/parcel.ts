/** An answer on its way to the page: JSON text, its zones one by one, so that a zone that says the same is not read again. */
export interface Parcel {
  readonly text: string;
  readonly zones?: readonly string[];
}

/** The zones of the last answer of one kind, by their text. */
export type Kept = Map<string, unknown>;

export function pack(text: string): Parcel {
  let answer: unknown;
  try {
    answer = text ? JSON.parse(text) : undefined;
  } catch {
    return { text }; // whoever reads it finds out
  }
  const zones = (answer as { zones?: unknown } | undefined)?.zones;
  if (!Array.isArray(zones)) return { text };
  return {
    text: JSON.stringify({ ...(answer as object), zones: [] }),
    zones: zones.map((z) => JSON.stringify(z)),
  };
}

/** The answer again; zones that say what they said in `kept` are the same objects. Throws SyntaxError for text that is no JSON. */
export function unpack(parcel: Parcel, kept: Kept): unknown {
  const answer: unknown = parcel.text ? JSON.parse(parcel.text) : undefined;
  if (!parcel.zones) return answer;
  const zones = parcel.zones.map((text): [string, unknown] => [text, kept.get(text) ?? JSON.parse(text)]);
  kept.clear();
  for (const [text, zone] of zones) kept.set(text, zone);
  return { ...(answer as object), zones: zones.map(([, zone]) => zone) };
}
