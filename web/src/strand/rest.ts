/** Pictures rest when none of them has changed for so long, ms (prior). */
const REST_MS = 250;

const waiting = new Map<object, () => void>();
let changedAt = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

function look(): void {
  const left = changedAt + REST_MS - performance.now();
  timer = left > 1 ? setTimeout(look, left) : undefined;
  if (timer !== undefined) return;
  const due = [...waiting.values()];
  waiting.clear();
  due.forEach((what) => what());
}

/** Does `what` once all pictures rest, this one changed just now; of several of one owner only the last. */
export function atRest(owner: object, what: () => void): void {
  changedAt = performance.now();
  waiting.set(owner, what);
  timer ??= setTimeout(look, REST_MS);
}

/** Drops what waits for this owner. */
export const forgetRest = (owner: object): void => void waiting.delete(owner);
