import { Away, Refused } from '../api/client';
import { scaleAfter, type ScaleWord } from '../api/scale';

/** After this a scale that was not heard of is asked for again, ms. */
const AGAIN_MS = 1000;

const tenth = (grams: number) => Math.round(grams * 10) / 10;

/** The scale under the bowl: what it says, less what stood on it at the last tare. */
export class Pan {
  word = $state.raw<ScaleWord>();
  /** What stood on the scale; undefined = nothing was tared yet. */
  tare = $state<number>();
  /** What is done as soon as the scale has settled. */
  #waits = $state.raw<{ then: (gross: number) => void }>();

  /** Whether there is a scale to go by. */
  get here(): boolean {
    return this.word !== undefined && this.word.state !== 'none' && this.word.state !== 'away';
  }
  /** There is one, but it says nothing. */
  get silent(): boolean {
    return this.word?.state === 'away';
  }
  get steady(): boolean {
    return this.word?.state === 'stable';
  }
  get waits(): boolean {
    return this.#waits !== undefined;
  }
  /** Grams since the last tare; undefined before it, and while the scale cannot say. */
  get net(): number | undefined {
    const { word, tare } = this;
    if (!word || tare === undefined || !this.here) return undefined;
    if (word.state === 'overload' || word.state === 'fault') return undefined;
    return tenth(word.grams - tare);
  }

  /** Does this once the scale has settled: only such a reading may be booked. */
  settled(then: (gross: number) => void): void {
    this.#waits = { then };
    this.#go();
  }
  #go(): void {
    const waits = this.#waits;
    if (!waits || !this.steady) return;
    this.#waits = undefined;
    waits.then(this.word!.grams);
  }
  /** Another bowl is on the counter. */
  clear(): void {
    this.tare = undefined;
    this.#waits = undefined;
  }

  hear(word: ScaleWord | undefined): void {
    this.word = word;
    this.#go();
  }

  /** Listens until the signal ends it. */
  async listen(signal: AbortSignal): Promise<void> {
    let after = 0;
    const wait = () => new Promise((go) => setTimeout(go, AGAIN_MS));
    while (!signal.aborted) {
      try {
        const word = await scaleAfter(after, signal);
        if (signal.aborted) return;
        if (word.seq !== after || !this.word) this.hear(word);
        after = word.seq;
        if (word.state === 'none') return;
      } catch (error) {
        if (signal.aborted) return;
        if (!(error instanceof Away || error instanceof Refused)) throw error;
        // A silent server says nothing of the scale either: what is typed counts.
        if (this.word) this.hear({ ...this.word, state: 'away' });
        after = 0;
        await wait();
      }
    }
  }
}
