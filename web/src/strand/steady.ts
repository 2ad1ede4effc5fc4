/** Gives back the earlier value while the new one says the same, so that nothing that depends on it is done again. */
export function steady<T>(): (next: T) => T {
  let before: { key: string; given: T; value: T } | undefined;
  return (next) => {
    if (before && before.given === next) return before.value;
    const key = JSON.stringify(next);
    before = { key, given: next, value: before?.key === key ? before.value : next };
    return before.value;
  };
}

/** The same for each of several, told apart by their ids: one that changes leaves the others alone. */
export function steadyEach<T extends { readonly id: string }>(): (next: readonly T[]) => T[] {
  const each = new Map<string, (next: T) => T>();
  return (next) =>
    next.map((one) => {
      const keep = each.get(one.id) ?? steady<T>();
      each.set(one.id, keep);
      return keep(one);
    });
}
