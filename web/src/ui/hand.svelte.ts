/** What is calm moves again so long after the hand let go, ms: in frames of its own. */
const AFTER = 50;

/** What somebody else than the finger does meanwhile. */
const OTHERWISE = ['pointerdown', 'keydown', 'click', 'input', 'change'] as const;

/**
 * Whether a finger holds a value that runs. What can wait for its end waits, so that frames stay free meanwhile; once
 * something else is done, by another finger or a key, nothing waits any more: it must find everything as it is.
 */
class Hand {
  /** No state: a press that screens had to hear of would cost its own frame. */
  held = false;
  #fingers = 0;
  #stirs = false;
  #settled = $state(0);
  #timer: ReturnType<typeof setTimeout> | undefined;
  readonly #waiting = new Map<object, () => void>();
  readonly #end = () => {
    if (!this.held) return;
    this.held = false;
    for (const event of OTHERWISE) removeEventListener(event, this.#end, true);
    this.#timer = setTimeout(() => {
      this.#stirs = false;
      this.#settled++;
    }, AFTER);
    const due = [...this.#waiting.values()];
    this.#waiting.clear();
    due.forEach((what) => what());
  };

  hold(): void {
    if (++this.#fingers > 1) return this.#end();
    clearTimeout(this.#timer);
    this.held = this.#stirs = true;
    for (const event of OTHERWISE) addEventListener(event, this.#end, true);
  }

  release(): void {
    this.#fingers = Math.max(0, this.#fingers - 1);
    this.#end();
  }

  /** From the press until what is calm may move again. */
  get stirs(): boolean {
    void this.#settled;
    return this.#stirs;
  }

  /** Does `what` now, or once the hand lets go; of several of one owner only the last. */
  afterwards(owner: object, what: () => void): void {
    if (this.held) this.#waiting.set(owner, what);
    else what();
  }

  /** Ends once nothing is held. */
  released(): Promise<void> {
    return new Promise((go) => this.afterwards({}, go));
  }

  /** Drops what waits for this owner. */
  forget(owner: object): void {
    this.#waiting.delete(owner);
  }
}
export const hand = new Hand();

/** `value`, but while a value is held, and a moment after, what it was before: for what need not follow every step. */
export function calm<T>(value: () => T): { readonly now: T } {
  let last: { now: T } | undefined;
  const now = $derived.by(() => (hand.stirs && last ? last : (last = { now: value() })).now);
  return {
    get now() {
      return now;
    },
  };
}
