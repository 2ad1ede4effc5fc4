import type { Bowl, PlanAnswer, ReviewAnswer, Visit } from '../api/types';
import * as api from '../api/visits';
import { hand } from '../ui/hand.svelte';
import { troubleOf, type Trouble } from './failed';
import { Latest } from './latest';
import { whole } from './mixing';

/** As many scenarios as answer at once; the plan, once these bowls are it, takes all. */
const SCENARIOS = 64;
const place = (id: string) => `strandline.mix.${id}`;

function read(id: string): Bowl[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(place(id)) ?? '[]');
    return Array.isArray(found) ? (found as Bowl[]) : [];
  } catch {
    return []; // what cannot be read was not written here
  }
}

/** Bowls of one's own beside the suggestion: they are judged, and nothing of the visit changes until they are used. */
export class Mixing {
  readonly #id: string;
  bowls = $state.raw<readonly Bowl[]>([]);
  /** What they do; undefined while that is worked out, or where there is nothing to judge. */
  answer = $state.raw<PlanAnswer>();
  review = $state.raw<ReviewAnswer>();
  trouble = $state.raw<Trouble>();
  judging = $state(false);
  reviewing = $state(false);
  #judged: { bowls: readonly Bowl[]; visit: Visit } | undefined;
  #judge = new Latest<PlanAnswer>();
  #review = new Latest<ReviewAnswer>();

  constructor(id: string) {
    this.#id = id;
    this.bowls = read(id);
  }

  /** These bowls instead; they outlive the page on this device. */
  change(bowls: readonly Bowl[], visit: Visit): void {
    this.bowls = bowls;
    this.review = undefined;
    this.#review.stop();
    this.reviewing = false;
    hand.afterwards(this, () => {
      if (bowls.length) localStorage.setItem(place(this.#id), JSON.stringify(bowls));
      else localStorage.removeItem(place(this.#id));
      void this.judge(visit);
    });
  }

  /** What these bowls do on this head, by the same rules as every other bowl. */
  async judge(visit: Visit): Promise<void> {
    const { bowls } = this;
    if (this.#judged?.bowls === bowls && this.#judged.visit === visit) return;
    const mixed = whole(bowls);
    this.trouble = undefined;
    if (!mixed.length) {
      this.#judge.stop();
      this.answer = undefined;
      this.judging = false;
      return;
    }
    this.judging = true;
    try {
      const asked = { ...visit, bowls: mixed, way: '', options: { scenarios: SCENARIOS, ...visit.options } };
      const answer = await this.#judge.run((signal) => api.whatIf(asked, signal));
      if (!answer) return;
      this.answer = answer;
      this.#judged = { bowls, visit };
    } catch (error) {
      this.answer = undefined;
      this.trouble = troubleOf(error);
    }
    this.judging = false;
  }

  /** The smallest change that would make them right; searches, can take seconds. */
  async ask(visit: Visit): Promise<void> {
    this.reviewing = true;
    this.trouble = undefined;
    try {
      const bowls = whole(this.bowls);
      const answer = await this.#review.run((signal) => api.review({ ...visit, bowls, way: '' }, signal));
      if (!answer) return;
      this.review = answer;
    } catch (error) {
      this.trouble = troubleOf(error);
    }
    this.reviewing = false;
  }

  /** Leaves off everything under way. */
  stop(): void {
    hand.forget(this);
    this.#judge.stop();
    this.#review.stop();
    this.judging = this.reviewing = false;
  }
}
