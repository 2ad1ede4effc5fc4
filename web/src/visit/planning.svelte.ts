import type { PlanAnswer, RouteView, Visit } from '../api/types';
import * as api from '../api/visits';
import { hand } from '../ui/hand.svelte';
import { troubleOf, type Trouble } from './failed';
import { Latest, Newest } from './latest';

/** As many scenarios as a search draws: a first answer while grams change. */
const SCENARIOS_AT_ONCE = 64;
/** Every scenario is asked for once the hand has been still for so long, ms (prior): taps follow one another faster. */
const STILL_MS = 150;
const still = () => hand.released().then(() => new Promise((go) => setTimeout(go, STILL_MS)));
const roughly = (visit: Visit): Visit => ({
  ...visit,
  options: { scenarios: SCENARIOS_AT_ONCE, ...visit.options },
});

/** A stopped search is asked for again, and ends after as long as it had run: what it had found then, but within this. */
const STOPPED_SECONDS = { least: 2, most: 6 };
/** How long a search goes on that was stopped before. */
const ON_SECONDS = 600;
const within = (visit: Visit, seconds: number): Visit => ({
  ...visit,
  options: { ...visit.options, seconds },
});

/** What plans look at: the clock that runs is no part of it. */
function alike(a: Visit | undefined, b: Visit): boolean {
  if (!a || a === b) return a === b;
  const keys = [...Object.keys(a), ...Object.keys(b)] as (keyof Visit)[];
  return keys.every((key) => key === 'running' || a[key] === b[key]);
}

/** What a search has found. */
interface Found {
  visit: Visit;
  plan: PlanAnswer;
  stopped: boolean;
}

/** The plan of an open visit: searched, stopped, or worked out from the colourist's own bowls. */
export class Planning {
  plan = $state.raw<PlanAnswer>();
  /** The plan is the best that a search had when it was stopped. */
  stopped = $state(false);
  /** The way over several steps that was taken: checks and later visits are read from it. */
  route = $state.raw<RouteView>();
  /** The way that the document names is not among those of today any more. */
  routeGone = $state(false);
  trouble = $state.raw<Trouble>();
  /** A search is under way; it was told to stop and gets its answer ready; a what-if is under way. */
  searching = $state(false);
  stopping = $state(false);
  trying = $state(false);

  #plan = new Latest<PlanAnswer>();
  #try = new Newest();
  #whole = new Latest<PlanAnswer | undefined>();
  #recall = new Latest<PlanAnswer>();
  #since = 0;
  #for: Visit | undefined;
  /** The last search: undoing own bowls comes back to it without searching again. */
  #found: Found | undefined;
  readonly #visit: () => Visit;

  /** `visit` gives the document as it is. */
  constructor(visit: () => Visit) {
    this.#visit = visit;
  }

  /** The plan was made for this document. */
  isFor(visit: Visit): boolean {
    return this.plan !== undefined && alike(this.#for, visit);
  }

  #is({ visit, plan, stopped }: Found): void {
    this.plan = plan;
    this.stopped = stopped;
    this.#for = visit;
    this.trouble = undefined;
  }

  /** Searches bowls for the document as it is, or works out its own bowls where it has them. */
  async now(): Promise<void> {
    const visit = this.#visit();
    if (visit.bowls?.length) {
      await this.#tryNow();
      await this.#recallRoute();
      return;
    }
    this.stop();
    if (this.#found && alike(this.#found.visit, visit)) this.#is(this.#found);
    else await this.#search(visit);
  }

  /** Ends the search under way: the best bowls so far follow, with how much better others could be. */
  async stopHere(): Promise<void> {
    if (!this.searching || this.stopping) return;
    const ran = (performance.now() - this.#since) / 1000;
    const { least, most } = STOPPED_SECONDS;
    this.stopping = true;
    await this.#search(this.#visit(), Math.min(Math.max(ran, least), most));
  }

  /** Searches to the end what was stopped. */
  async searchOn(): Promise<void> {
    this.stop();
    await this.#search(this.#visit(), ON_SECONDS);
  }

  async #search(visit: Visit, seconds = visit.options?.seconds): Promise<void> {
    this.searching = true;
    this.trouble = undefined;
    const since = (this.#since = performance.now());
    const asked = seconds === undefined ? visit : within(visit, seconds);
    try {
      const plan = await this.#plan.run((signal) => api.plan(asked, signal));
      if (!plan) return;
      // Bowls may be searched to the end and yet the time be too short for other ways and routes.
      const late = (performance.now() - since) / 1000 >= (seconds ?? Infinity);
      this.#found = { visit, plan, stopped: late || plan.report.stopped === 'cancelled' };
      this.#is(this.#found);
    } catch (error) {
      this.trouble = troubleOf(error);
    }
    this.searching = this.stopping = false;
  }

  /** The document names the way its bowls come from; what it holds beside them is worked out again. */
  async #recallRoute(): Promise<void> {
    const visit = this.#visit();
    const { way } = visit;
    if (!way || this.route?.kind === way || this.routeGone || this.#recall.busy) return;
    try {
      const answer = await this.#recall.run((signal) => api.plan({ ...visit, bowls: [], way: '' }, signal));
      if (!answer || this.#visit().way !== way) return;
      this.route = answer.routes.find((route) => route.kind === way);
      this.routeGone = !this.route;
    } catch (error) {
      this.trouble = troubleOf(error);
    }
  }

  /** What the own bowls do. Grams that are held change faster than they are worked out: the newest counts. */
  async #tryNow(): Promise<void> {
    this.#plan.stop();
    this.searching = this.stopping = false;
    this.#whole.stop();
    this.trying = true;
    let last: Visit | undefined;
    await this.#try.run(async (signal) => {
      const visit = this.#visit();
      try {
        // Asked for twice, by the hand and by the screen, it is worked out once.
        if (!this.isFor(visit)) {
          const plan = await api.whatIf(roughly(visit), signal);
          if (signal.aborted) return;
          this.#is({ visit, plan, stopped: false });
        }
        last = visit;
      } catch (error) {
        if (!signal.aborted) this.trouble = troubleOf(error);
      }
    });
    // Of several who waited only the one whose turn was the last goes on.
    if (last && last === this.#visit() && !last.options?.scenarios) await this.#tryWhole(last);
    if (!this.#whole.busy) this.trying = false;
  }

  /** The same with every scenario, once the hand is still. */
  async #tryWhole(visit: Visit): Promise<void> {
    this.trying = true;
    try {
      const plan = await this.#whole.run(async (signal) => {
        await still();
        return signal.aborted ? undefined : api.whatIf(visit, signal);
      });
      if (plan && this.#visit() === visit) this.#is({ visit, plan, stopped: false });
    } catch (error) {
      this.trouble = troubleOf(error);
    }
  }

  /** The bowls come from this way over several steps, or from none. */
  take(route: RouteView | undefined): void {
    this.route = route;
    this.routeGone = false;
  }

  /** Leaves off everything under way. */
  stop(): void {
    this.#plan.stop();
    this.#try.stop();
    this.#whole.stop();
    this.#recall.stop();
    this.searching = this.stopping = this.trying = false;
  }
}
