import type { RouteView, Visit } from '../api/types';
import { hand } from '../ui/hand.svelte';

/** What a change leaves: the document, and the way over several steps that its bowls were of. */
export interface Was {
  readonly document: Visit;
  readonly route: RouteView | undefined;
}

/** More steps back than these nobody remembers. */
const MOST = 100;

/** What the open visit was before each change; what runs under one hand is one change. */
export class History {
  #past: Was[] = [];
  #held = false;
  /** How many changes can be taken back; a hand that holds a value hears of it once it lets go. */
  count = $state(0);

  add(was: Was): Was {
    const last = this.#past.at(-1);
    if (this.#held && last) return last;
    this.#past = [...this.#past, was].slice(-MOST);
    this.#held = hand.held;
    hand.afterwards(this, () => {
      this.#held = false;
      this.count = this.#past.length;
    });
    return was;
  }

  /** What was before the last change, or before the one that left `was`; those after it are forgotten. */
  back(was = this.#past.at(-1)): Was | undefined {
    const at = was ? this.#past.lastIndexOf(was) : -1;
    if (at < 0) return undefined;
    this.#past = this.#past.slice(0, at);
    this.#held = false;
    this.count = at;
    return was;
  }
}
