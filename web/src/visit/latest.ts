/** Runs one request at a time; a newer one aborts the older and only the newest answer is given to `done`. */
export class Latest<T> {
  #abort: AbortController | undefined;

  async run(ask: (signal: AbortSignal) => Promise<T>): Promise<T | undefined> {
    this.stop();
    const mine = new AbortController();
    this.#abort = mine;
    try {
      const answer = await ask(mine.signal);
      return this.#abort === mine ? answer : undefined;
    } catch (error) {
      if (mine.signal.aborted) return undefined;
      throw error;
    } finally {
      if (this.#abort === mine) this.#abort = undefined;
    }
  }

  stop(): void {
    this.#abort?.abort();
    this.#abort = undefined;
  }

  /** A request is under way. */
  get busy(): boolean {
    return this.#abort !== undefined;
  }
}

/**
 * One turn at a time, and no queue: of the turns asked for meanwhile only the newest runs next. Unlike Latest every turn
 * ends, so a value that is held keeps being answered.
 */
export class Newest {
  #abort = new AbortController();
  #under: Promise<void> | undefined;
  #next: ((signal: AbortSignal) => Promise<void>) | undefined;

  /** Runs `turn` now, or next; ends when nothing is left to run. */
  run(turn: (signal: AbortSignal) => Promise<void>): Promise<void> {
    this.#next = turn;
    this.#under ??= this.#turns(this.#abort.signal);
    return this.#under;
  }

  async #turns(signal: AbortSignal): Promise<void> {
    try {
      while (this.#next && !signal.aborted) {
        const turn = this.#next;
        this.#next = undefined;
        await turn(signal);
      }
    } finally {
      if (this.#abort.signal === signal) this.#under = undefined;
    }
  }

  /** Stops the turn under way and drops the next. */
  stop(): void {
    this.#abort.abort();
    this.#abort = new AbortController();
    this.#under = undefined;
    this.#next = undefined;
  }
}
