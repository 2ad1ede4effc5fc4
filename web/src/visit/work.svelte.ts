import { Away, Refused } from '../api/client';
import type {
  AimAnswer,
  AssessAnswer,
  Bowl,
  BowlView,
  PlanAnswer,
  Problem,
  ReachAnswer,
  RouteView,
  Visit,
} from '../api/types';
import * as api from '../api/visits';
import type { Draft, Drafts } from '../offline/drafts';
import { pruned } from './aims';
import { Latest, Newest } from './latest';

/** Where the changes of the open visit are. */
export type Saving = 'saved' | 'saving' | 'waiting' | 'refused' | 'changed_elsewhere';

/** Why an answer is missing; `away` = the server is silent. */
export type Trouble = { away: true } | { away: false; problems: Problem[] };

/** As many scenarios as a search draws: a first answer while grams change. */
const SCENARIOS_AT_ONCE = 64;
const roughly = (visit: Visit): Visit => ({
  ...visit,
  options: { scenarios: SCENARIOS_AT_ONCE, ...visit.options },
});

/** What an error of a request means; anything else is thrown on. */
export const troubleOf = (error: unknown): Trouble => {
  if (error instanceof Refused) return { away: false, problems: error.problems };
  if (error instanceof Away) return { away: true };
  throw error;
};

/** A planned bowl as the colourist's own. */
export const ownBowl = (bowl: BowlView): Bowl => ({
  label: bowl.label,
  range: bowl.range,
  parts: bowl.parts.map(({ product, grams }) => ({ product, grams })),
  minutes: bowl.minutes,
  damp_hair: bowl.damp_hair,
  zones: [...bowl.zones],
  ...(bowl.step > 1 ? { step: bowl.step } : {}),
});

/** The open visit: its document, what the server says about it, and whether it is stored. */
export class Work {
  readonly id: string;
  #seq: number;
  visit = $state.raw<Visit>() as Visit;

  saving = $state<Saving>('saved');
  assessment = $state.raw<AssessAnswer>();
  targets = $state.raw<AimAnswer>();
  plan = $state.raw<PlanAnswer>();
  /** The way over several steps that was taken: checks and later visits are read from it. */
  route = $state.raw<RouteView>();
  /** The way that the document names is not among those of today any more. */
  routeGone = $state(false);
  /** What can be had today, for the head as it is; undefined while it is asked. */
  reach = $state.raw<ReachAnswer>();
  /** What stands in the way of each answer. */
  assessTrouble = $state.raw<Trouble>();
  aimTrouble = $state.raw<Trouble>();
  planTrouble = $state.raw<Trouble>();
  reachTrouble = $state.raw<Trouble>();
  saveTrouble = $state.raw<Trouble>();
  /** A search or a what-if is under way. */
  searching = $state(false);
  trying = $state(false);

  #assess = new Newest();
  #aim = new Newest();
  #plan = new Latest<PlanAnswer>();
  #try = new Newest();
  #whole = new Latest<PlanAnswer>();
  #recall = new Latest<PlanAnswer>();
  #reach = new Latest<ReachAnswer>();
  #reached: Visit['head'] | undefined;
  #sending = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #aimTimer: ReturnType<typeof setTimeout> | undefined;
  #planned: { visit: Visit } | undefined;
  /** The last search: undoing own bowls comes back to it without searching again. */
  #found: { visit: Visit; plan: PlanAnswer } | undefined;
  readonly #drafts: Drafts | undefined;
  #keeping: Promise<void> | undefined;
  /** The unsaved document lies in this device's store too, so the page may be closed. */
  kept = $state(false);
  /** A change of this device that another one overtook: a person decides. */
  overtaken = $state.raw<Draft>();

  constructor(stored: Pick<api.SavedVisit, 'id' | 'seq' | 'document'>, drafts?: Drafts, draft?: Draft) {
    this.id = stored.id;
    this.#seq = stored.seq;
    this.visit = stored.document;
    this.#drafts = drafts;
    if (!draft) return;
    if (draft.seq === stored.seq) {
      this.visit = draft.document;
      this.kept = true;
      this.#saveSoon();
    } else this.overtaken = draft;
  }

  /** Takes the overtaken change (as a new one) or lets it go. */
  settle(take: boolean): void {
    const draft = this.overtaken;
    this.overtaken = undefined;
    if (draft && take) this.change(draft.document);
    else void this.#drafts?.drop(this.id);
  }

  /** Lays the document into the device's store; the newest one follows when more changes come meanwhile. */
  #keep(): void {
    if (!this.#drafts || this.#keeping || this.overtaken) return;
    const laid = this.visit;
    this.#keeping = this.#drafts
      .keep(this.id, { seq: this.#seq, document: laid })
      .then((kept) => void (this.kept = kept))
      .finally(() => {
        this.#keeping = undefined;
        if (this.saving === 'saved') this.#drop();
        else if (this.visit !== laid) this.#keep();
      });
  }

  /** The plan on screen belongs to the document as it is now. */
  get planIsCurrent(): boolean {
    return this.plan !== undefined && this.#planned?.visit === this.visit;
  }

  /** Replaces the document; saving and reading follow. Gives a way back. */
  change(next: Visit): () => void {
    const before = this.visit;
    this.visit = next.head === before.head ? next : pruned(next);
    this.#saveSoon();
    this.#keep();
    if (this.visit.head !== before.head) {
      this.reach = undefined;
      void this.assessNow();
    }
    // A new wish is answered at once; a head that is being read leaves its wishes for a quiet moment.
    if (this.visit.aims !== before.aims) void this.aimNow();
    else if (this.visit.head !== before.head && this.visit.aims?.length) this.#aimSoon();
    return () => void this.change(before);
  }

  #aimSoon(): void {
    clearTimeout(this.#aimTimer);
    this.#aimTimer = setTimeout(() => void this.aimNow(), 250);
  }

  #saveSoon(): void {
    this.saving = 'waiting';
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.save(), 400);
  }

  /** Stores the document; a conflict is shown, never solved by overwriting. */
  async save(): Promise<void> {
    clearTimeout(this.#timer);
    // One at a time: a second one would carry an entry number that the first is about to use up.
    if (this.#sending) return;
    const sent = this.visit;
    this.#sending = true;
    this.saving = 'saving';
    try {
      const stored = await api.saveVisit(this.id, this.#seq, sent);
      this.#seq = stored.seq;
      this.saveTrouble = undefined;
      this.saving = 'saved';
      if (this.visit !== sent) {
        this.#saveSoon();
        this.#keep();
      } else if (!this.#keeping) this.#drop();
    } catch (error) {
      const conflict = error instanceof Refused && error.status === 409;
      this.saveTrouble = troubleOf(error);
      this.saving = conflict ? 'changed_elsewhere' : this.saveTrouble.away ? 'waiting' : 'refused';
      if (this.saveTrouble.away) this.#timer = setTimeout(() => void this.save(), 3000);
      else if (!conflict && this.visit !== sent) this.#saveSoon();
    } finally {
      this.#sending = false;
    }
  }

  #drop(): void {
    this.kept = false;
    if (!this.overtaken) void this.#drafts?.drop(this.id);
  }

  assessNow(): Promise<void> {
    return this.#assess.run(async (signal) => {
      try {
        const answer = await api.assess(this.visit, signal);
        if (signal.aborted) return;
        this.assessment = answer;
        this.assessTrouble = undefined;
      } catch (error) {
        if (!signal.aborted) this.assessTrouble = troubleOf(error);
      }
    });
  }

  async aimNow(): Promise<void> {
    clearTimeout(this.#aimTimer);
    if (!this.visit.aims?.length) {
      this.#aim.stop();
      this.targets = undefined;
      this.aimTrouble = undefined;
      return;
    }
    await this.#aim.run(async (signal) => {
      try {
        const answer = await api.aim(this.visit, signal);
        if (signal.aborted) return;
        this.targets = answer;
        this.aimTrouble = undefined;
      } catch (error) {
        if (!signal.aborted) this.aimTrouble = troubleOf(error);
      }
    });
  }

  /** Asks what this head can become, once per head: wishes do not change it. */
  async reachNow(): Promise<void> {
    const { head } = this.visit;
    if (this.reach && this.#reached === head) return;
    this.reachTrouble = undefined;
    try {
      const answer = await this.#reach.run((signal) => api.reach(this.visit, signal));
      if (!answer) return;
      this.reach = answer;
      this.#reached = head;
    } catch (error) {
      this.reachTrouble = troubleOf(error);
    }
  }

  /** Searches bowls for the document as it is, or works out its own bowls where it has them. */
  async planNow(): Promise<void> {
    if (!this.visit.bowls?.length) return this.#search();
    await this.#tryNow();
    await this.#recallRoute();
  }

  /** The document names the way its bowls come from; what it holds beside them is worked out again. */
  async #recallRoute(): Promise<void> {
    const { way } = this.visit;
    if (!way || this.route?.kind === way || this.routeGone || this.#recall.busy) return;
    try {
      const answer = await this.#recall.run((signal) =>
        api.plan({ ...this.visit, bowls: [], way: '' }, signal),
      );
      if (!answer || this.visit.way !== way) return;
      this.route = answer.routes.find((route) => route.kind === way);
      this.routeGone = !this.route;
    } catch (error) {
      this.planTrouble = troubleOf(error);
    }
  }

  #planIs(plan: PlanAnswer, visit: Visit): void {
    this.plan = plan;
    this.#planned = { visit };
    this.planTrouble = undefined;
  }

  /** What the own bowls do. Grams that are held change faster than they are worked out: the newest counts. */
  async #tryNow(): Promise<void> {
    this.#plan.stop();
    this.searching = false;
    this.#whole.stop();
    this.trying = true;
    let last: Visit | undefined;
    await this.#try.run(async (signal) => {
      const asked = this.visit;
      try {
        const answer = await api.whatIf(roughly(asked), signal);
        if (signal.aborted) return;
        this.#planIs(answer, asked);
        last = asked;
      } catch (error) {
        if (!signal.aborted) this.planTrouble = troubleOf(error);
      }
    });
    // Of several who waited only the one whose turn was the last goes on.
    if (last && last === this.visit && !last.options?.scenarios) await this.#tryWhole(last);
    if (!this.#whole.busy) this.trying = false;
  }

  /** The same with every scenario, once the hand is still. */
  async #tryWhole(asked: Visit): Promise<void> {
    this.trying = true;
    try {
      const answer = await this.#whole.run((signal) => api.whatIf(asked, signal));
      if (answer && this.visit === asked) this.#planIs(answer, asked);
    } catch (error) {
      this.planTrouble = troubleOf(error);
    }
  }

  async #search(): Promise<void> {
    const asked = this.visit;
    this.stopPlan();
    if (this.#found?.visit === asked) {
      this.#planIs(this.#found.plan, asked);
      return;
    }
    this.searching = true;
    try {
      const answer = await this.#plan.run((signal) => api.plan(asked, signal));
      if (!answer) return;
      this.#planIs(answer, asked);
      this.#found = { visit: asked, plan: answer };
    } catch (error) {
      this.planTrouble = troubleOf(error);
    }
    this.searching = false;
  }

  stopPlan(): void {
    this.#plan.stop();
    this.#try.stop();
    this.#whole.stop();
    this.#recall.stop();
    this.searching = false;
    this.trying = false;
  }

  /**
   * Bowls of the colourist's own; none = the found ones again. The plan screen asks what they do. `route` is the way over
   * several steps that they come from; bowls that change later stay on it.
   */
  tryBowls(bowls: Bowl[], route?: RouteView): () => void {
    const before = this.route;
    if (route || !bowls.length) {
      this.route = route;
      this.routeGone = false;
    }
    const way = route?.kind ?? (bowls.length ? this.visit.way : undefined);
    const undo = this.change({ ...this.visit, bowls, way: way ?? '' });
    return () => {
      this.route = before;
      undo();
    };
  }

  close(): void {
    this.#assess.stop();
    clearTimeout(this.#aimTimer);
    this.#aim.stop();
    this.#reach.stop();
    this.stopPlan();
    if (this.saving === 'waiting') void this.save();
  }
}
