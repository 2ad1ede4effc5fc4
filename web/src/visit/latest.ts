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
}
