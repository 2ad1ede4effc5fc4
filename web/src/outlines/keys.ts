/** Gives each name a key of its own under `uid`, always the same: names of areas have spaces, which url(#…) does not take. */
export function keysUnder(uid: string): (name: string) => string {
  const keys = new Map<string, string>();
  return (name) => {
    const key = keys.get(name) ?? `${uid}-${keys.size}`;
    keys.set(name, key);
    return key;
  };
}
