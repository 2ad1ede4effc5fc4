/** Gives each name a key of its own under `uid`, always the same: names of areas have spaces, which url(#…) does not take. */
export function keysUnder(uid: string): (name: string) => string {
  const keys = new Map<string, string>();
  return (name) => {
    const key = keys.get(name) ?? `${uid}-${keys.size}`;
    keys.set(name, key);
    return key;
  };
}

/** Where a key of the arrows, Home or End leads from place `at` of `count`, round at both ends; undefined for other keys. */
export function stepOf(key: string, at: number, count: number): number | undefined {
  const to = {
    ArrowRight: at + 1,
    ArrowDown: at + 1,
    ArrowLeft: at - 1,
    ArrowUp: at - 1,
    Home: 0,
    End: count - 1,
  }[key];
  return to === undefined ? undefined : (to + count) % count;
}
