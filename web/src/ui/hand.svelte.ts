import { untrack } from 'svelte';

/** Whether a finger holds a value that runs. What can wait for its end waits, so that frames stay free meanwhile. */
class Hand {
  held = $state(false);
  readonly #waiting = new Map<object, () => void>();

  hold(): void {
    this.held = true;
  }

  release(): void {
    if (!this.held) return;
    this.held = false;
    const due = [...this.#waiting.values()];
    this.#waiting.clear();
    due.forEach((what) => what());
  }

  /** Does `what` now, or once the hand lets go; of several of one owner only the last. */
  afterwards(owner: object, what: () => void): void {
    if (untrack(() => this.held)) this.#waiting.set(owner, what);
    else what();
  }

  /** Drops what waits for this owner. */
  forget(owner: object): void {
    this.#waiting.delete(owner);
  }
}
export const hand = new Hand();

/** `value`, but while a value is held what it was before: for what need not follow every step. */
export function calm<T>(value: () => T): { readonly now: T } {
  let last: { now: T } | undefined;
  const now = $derived.by(() => (hand.held && last ? last : (last = { now: value() })).now);
  return {
    get now() {
      return now;
    },
  };
}
