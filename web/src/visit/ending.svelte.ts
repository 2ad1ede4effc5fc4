import { handIn, type NewFact } from '../api/facts';
import { newId } from '../api/id';
import { endings, type EndingAsked } from '../offline/drafts';
import { troubleOf, type Trouble } from './failed';

/** What the end of a visit needs of it. */
export interface Endable {
  readonly id: string;
  /** Entry number of the document as it is stored. */
  readonly storedSeq: number;
  readonly saving: string;
  readonly saveTrouble: Trouble | undefined;
  save(): Promise<void>;
  /** What happened; some of it is taken before the end only. */
  readonly facts: { again(): Promise<void>; readonly trouble: Trouble | undefined };
  /** It was handed in at this instant. */
  ended(at: string | undefined): void;
}

const AGAIN_MS = 3000;

/** The hand-in of one visit. Asked while the server is silent, it waits sealed on this device and is asked again. */
export class Ending {
  /** What was asked and has no answer yet. */
  waits = $state.raw<EndingAsked>();
  /** Why it waits, or what it was refused for. */
  trouble = $state.raw<Trouble>();
  /** It lies in this device's store, so the page may be closed. */
  kept = $state(false);

  readonly #work: Endable;
  #asking: Promise<boolean> | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #rests = false;

  constructor(work: Endable) {
    this.#work = work;
  }

  /** Takes up what an earlier page left. */
  async load(): Promise<void> {
    const left = await endings.read(this.#work.id);
    if (!left || this.waits) return;
    this.waits = left;
    this.kept = true;
    await this.again();
  }

  /** Asks for the end with these facts; true once it is reached. Asked again it stays the same entry, so it happens once. */
  async ask(facts: readonly NewFact[], person?: string): Promise<boolean> {
    const entry = this.waits?.entry ?? newId();
    this.waits = { entry, facts: [...facts], ...(person ? { person } : {}) };
    this.kept = await endings.keep(this.#work.id, this.waits);
    return this.again();
  }

  again(): Promise<boolean> {
    clearTimeout(this.#timer);
    if (!this.waits || this.#rests) return Promise.resolve(false);
    this.#asking ??= this.#ask(this.waits).finally(() => (this.#asking = undefined));
    return this.#asking;
  }

  async #ask(asked: EndingAsked): Promise<boolean> {
    try {
      await this.#work.facts.again();
      // Once stored it is not stored again: where only the answer was lost, the visit has ended and takes no change.
      if (this.#work.saving !== 'saved') await this.#work.save();
      const untold = this.#work.facts.trouble?.away;
      if (this.#work.saving === 'saved' && !untold) {
        const at = (await handIn(this.#work.id, { ...asked, seq: this.#work.storedSeq })).handed_in_at;
        await this.letGo();
        this.#work.ended(at);
        return true;
      }
      this.trouble = (untold ? undefined : this.#work.saveTrouble) ?? { away: true };
    } catch (error) {
      this.trouble = troubleOf(error);
    }
    if (this.trouble.away && !this.#rests) this.#timer = setTimeout(() => void this.again(), AGAIN_MS);
    return false;
  }

  /** Wants it no more: the visit stays open, or as another device ended it. */
  async letGo(): Promise<void> {
    clearTimeout(this.#timer);
    this.waits = undefined;
    this.trouble = undefined;
    this.kept = false;
    await endings.drop(this.#work.id);
  }

  /** Asks no more: whoever opens the visit next does. */
  async rest(): Promise<void> {
    this.#rests = true;
    clearTimeout(this.#timer);
    await this.#asking;
  }
}
