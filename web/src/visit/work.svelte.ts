import { Refused } from '../api/client';
import { newId } from '../api/id';
import type {
  AimAnswer,
  AssessAnswer,
  Bowl,
  BowlView,
  PlanAnswer,
  ReachAnswer,
  RouteView,
  Visit,
} from '../api/types';
import * as api from '../api/visits';
import { sameDocument, type Draft, type Drafts } from '../offline/drafts';
import { hand } from '../ui/hand.svelte';
import { closeWaysBack } from '../ui/toasts.svelte';
import { pruned } from './aims';
import { troubleOf, type Trouble } from './failed';
import { Ending } from './ending.svelte';
import { Facts } from './facts.svelte';
import { History, type Was } from './history.svelte';
import { Latest, Newest } from './latest';
import { Mixing } from './mixing.svelte';
import { Planning } from './planning.svelte';
import { together } from './together';

/** Where the changes of the open visit are. */
export type Saving = 'saved' | 'saving' | 'waiting' | 'refused' | 'changed_elsewhere';

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
  #visit: Visit;
  /** The document of entry `#seq`: what two devices changed is told apart by it. */
  #base: Visit;
  /** The id under which a document is saved, the same however often it is handed in. */
  #named: { document: Visit; entry: string } | undefined;
  /** Ids that were handed in since the last answer: if one of them is the newest entry, it is ours. */
  #handed: string[] = [];
  /** Counts what screens were told of the document. */
  #told = $state(0);

  saving = $state<Saving>('saved');
  assessment = $state.raw<AssessAnswer>();
  targets = $state.raw<AimAnswer>();
  /** What can be had today, for the head as it is; undefined while it is asked. */
  reach = $state.raw<ReachAnswer>();
  /** What stands in the way of each answer. */
  assessTrouble = $state.raw<Trouble>();
  aimTrouble = $state.raw<Trouble>();
  reachTrouble = $state.raw<Trouble>();
  saveTrouble = $state.raw<Trouble>();

  /** Bowls of the colourist's own beside the plan. */
  readonly mixing: Mixing;
  /** What happened so far. */
  readonly facts: Facts;
  /** Its hand-in, also one that waits for the server. */
  readonly ending: Ending = new Ending(this);

  #assess = new Newest();
  #aim = new Newest();
  #planning = new Planning(() => this.visit);
  #history = new History();
  #reach = new Latest<ReachAnswer>();
  #reached: Visit['head'] | undefined;
  /** The save under way, and the drop of the draft after it. */
  #sending: Promise<void> | undefined;
  #dropping: Promise<void> | undefined;
  #rests = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #aimTimer: ReturnType<typeof setTimeout> | undefined;
  readonly #drafts: Drafts | undefined;
  #keeping: Promise<void> | undefined;
  /** The unsaved document lies in this device's store too, so the page may be closed. */
  kept = $state(false);
  /** A change of this device that another one overtook: a person decides. */
  overtaken = $state.raw<Draft>();

  /** When it was handed in; from then on it changes no more. */
  handedInAt = $state<string>();
  /** Whose visit it is, where that is known. */
  readonly person: string | undefined;

  constructor(
    stored: Pick<api.SavedVisit, 'id' | 'seq' | 'document' | 'person' | 'handed_in_at'> & { entry?: string },
    drafts?: Drafts,
    draft?: Draft,
  ) {
    this.id = stored.id;
    this.mixing = new Mixing(stored.id);
    this.facts = new Facts(stored.id);
    this.#seq = stored.seq;
    this.#visit = this.#base = stored.document;
    this.#drafts = drafts;
    this.person = stored.person;
    this.handedInAt = stored.handed_in_at;
    if (!draft || draft.clean || this.handedInAt) {
      if (draft?.clean || stored.document.running) this.#drop();
      return;
    }
    const onOwn = stored.entry !== undefined && draft.handed?.includes(stored.entry);
    if (stored.entry !== undefined && stored.entry === draft.entry) {
      this.#drop(); // stored, and its answer did not come
    } else if (draft.seq === stored.seq || onOwn) {
      this.#visit = draft.document;
      if (draft.entry) this.#named = { document: draft.document, entry: draft.entry };
      this.#handed = draft.handed ?? [];
      this.kept = true;
      this.#saveSoon();
    } else if (draft.base && this.#joinsDraft(draft, stored.document)) {
      this.#saveSoon(); // marks of two devices
    } else if (sameDocument(draft.document, stored.document)) {
      this.#drop(); // stored, and the page was closed before it knew
    } else this.overtaken = draft;
  }

  /**
   * The document as it is. Screens are told of a reading or grams that are held once the hand lets go: until then they move
   * with the answers alone, and whoever asks finds the newest.
   */
  get visit(): Visit {
    void this.#told;
    return this.#visit;
  }

  #joinsDraft({ base, document }: Draft, stored: Visit): boolean {
    const both = base && together(base, document, stored);
    if (!both || sameDocument(both, stored)) return false;
    this.#visit = both;
    this.kept = true;
    return true;
  }

  /** Takes the overtaken change (as a new one) or lets it go. */
  settle(take: boolean): void {
    const draft = this.overtaken;
    this.overtaken = undefined;
    if (draft && take) this.change(draft.document);
    else this.#drop();
  }

  #entryOf(document: Visit): string {
    if (this.#named?.document !== document) this.#named = { document, entry: newId() };
    return this.#named.entry;
  }

  /** Lays the document into the device's store; the newest one follows when more changes come meanwhile. */
  #keep(): void {
    if (!this.#drafts || this.#keeping || this.overtaken) return;
    const laid = this.visit;
    const drafts = this.#drafts;
    const lay = () =>
      drafts.keep(this.id, {
        seq: this.#seq,
        document: laid,
        ...(laid.running ? { base: this.#base } : {}),
        entry: this.#entryOf(laid),
        handed: [...this.#handed],
      });
    // Behind what is laid down as stored: the newest stays.
    this.#keeping = (this.#dropping ? this.#dropping.then(lay) : lay())
      .then((kept) => void (this.kept = kept))
      .finally(() => {
        this.#keeping = undefined;
        if (this.saving === 'saved') this.#drop();
        else if (this.visit !== laid) this.#store();
      });
  }

  /** Replaces the document; saving and reading follow. Gives a way back to before it. */
  change(next: Visit): () => void {
    return this.#change(next, this.route);
  }

  #change(next: Visit, route: RouteView | undefined): () => void {
    if (this.handedInAt) return () => {};
    const was = this.#history.add({ document: this.#visit, route });
    this.#turn(next);
    return () => this.undo(was);
  }

  /** A change can be taken back. */
  get canUndo(): boolean {
    return this.#history.count > 0;
  }

  /** Takes back the last change, or all down to the one that left `was`. */
  undo(was?: Was): void {
    const to = this.#history.back(was);
    if (!to) return;
    this.#planning.route = to.route;
    this.#turn(to.document);
  }

  #turn(next: Visit): void {
    closeWaysBack();
    const before = this.#visit;
    const read = next.head !== before.head;
    this.#visit = read ? pruned(next) : next;
    // A wish is drawn from the document itself, beside its answer; a reading and grams are drawn from their answers.
    if (next.aims === before.aims) hand.afterwards(this.#assess, () => this.#told++);
    else this.#told++;
    this.#store();
    if (read) {
      this.reach = undefined;
      void this.assessNow();
    }
    // A new wish is answered at once; a head that is being read leaves its wishes for a quiet moment.
    if (this.#visit.aims !== before.aims) void this.aimNow();
    else if (read && this.#visit.aims?.length) hand.afterwards(this.#aim, () => this.#aimSoon());
  }

  #aimSoon(): void {
    clearTimeout(this.#aimTimer);
    this.#aimTimer = setTimeout(() => void this.aimNow(), 250);
  }

  /** Lays the document down, here and on the server; a value that is held changes it often: once the hand lets go. */
  #store(): void {
    this.saving = 'waiting';
    hand.afterwards(this, () => {
      this.#saveSoon();
      this.#keep();
    });
  }

  #saveSoon(): void {
    this.saving = 'waiting';
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => (hand.held ? this.#store() : void this.save()), 400);
  }

  /** Stores the document; a conflict is shown, never solved by overwriting. */
  save(): Promise<void> {
    clearTimeout(this.#timer);
    // One at a time: a second one would carry an entry number that the first is about to use up.
    this.#sending ??= this.#send().finally(() => (this.#sending = undefined));
    return this.#sending;
  }

  async #send(): Promise<void> {
    const sent = this.visit;
    const entry = this.#entryOf(sent);
    this.saving = 'saving';
    if (!this.#handed.includes(entry)) this.#handed.push(entry);
    try {
      const stored = await api.saveVisit(this.id, this.#seq, sent, entry);
      this.#seq = stored.seq;
      this.#base = sent;
      this.#handed = [];
      this.saveTrouble = undefined;
      this.saving = 'saved';
      if (this.visit !== sent) this.#store();
      else if (!this.#keeping) this.#drop();
    } catch (refusal) {
      let error = refusal;
      let conflict = error instanceof Refused && error.status === 409;
      if (conflict) {
        try {
          if (await this.#overtookItself()) return this.#saveSoon();
        } catch (unread) {
          // Whose the newest entry is cannot be known now: later.
          error = unread;
          conflict = false;
        }
      }
      this.saveTrouble = troubleOf(error);
      this.saving = conflict ? 'changed_elsewhere' : this.saveTrouble.away ? 'waiting' : 'refused';
      if (this.#rests) return;
      const later = this.saveTrouble.away || (error instanceof Refused && error.status >= 500);
      if (later) this.#timer = setTimeout(() => void this.save(), 3000);
      else if (!conflict && this.visit !== sent) this.#saveSoon();
    }
  }

  /** Whether the newest entry is one of ours whose answer was lost; then the next save goes on from it. */
  async #overtookItself(): Promise<boolean> {
    const newest = await api.openVisit(this.id);
    if (newest.seq <= this.#seq) return false;
    if (!this.#handed.includes(newest.entry)) return this.#joins(newest);
    this.#seq = newest.seq;
    this.#base = newest.document;
    return true;
  }

  /** Another device marked the same running visit: the marks of both. */
  #joins(newest: api.SavedVisit): boolean {
    const both = together(this.#base, this.#visit, newest.document);
    if (!both) return false;
    this.#seq = newest.seq;
    this.#base = newest.document;
    this.#visit = both;
    this.#told++;
    return true;
  }

  /** Takes what another device stored meanwhile, where nothing of this one waits. */
  async catchUp(): Promise<void> {
    const idle = () => this.saving === 'saved' && !this.#sending && !hand.held && !this.#rests;
    if (!idle()) return;
    try {
      const newest = await api.openVisit(this.id);
      if (newest.seq <= this.#seq || !idle()) return;
      const read = !sameDocument(newest.document.head, this.#visit.head);
      this.#seq = newest.seq;
      this.#visit = this.#base = newest.document;
      this.#drop();
      this.#told++;
      if (read) void this.assessNow();
      void this.aimNow();
    } catch (error) {
      troubleOf(error); // a server that is silent or refuses is told of by the next save
    }
  }

  /** What the server has is no draft any more. Of a visit that runs it stays here too, until it is handed in. */
  #drop(): void {
    this.kept = false;
    const drafts = this.#drafts;
    if (this.overtaken || !drafts) return;
    const runs = this.#base.running && !this.handedInAt;
    const stored = { seq: this.#seq, document: this.#base, clean: true as const };
    const done = runs ? drafts.keep(this.id, stored).then(() => undefined) : drafts.drop(this.id);
    this.#dropping = done;
    void done.finally(() => {
      if (this.#dropping === done) this.#dropping = undefined;
    });
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

  /** Asks again for every answer that is missing because the server was silent. */
  again(): void {
    if (this.assessTrouble?.away) void this.assessNow();
    if (this.aimTrouble?.away) void this.aimNow();
    if (this.reachTrouble?.away) void this.reachNow();
    if (this.planTrouble?.away) void this.planNow();
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

  /** The plan and all that is asked for it: see Planning. */
  get plan(): PlanAnswer | undefined {
    return this.#planning.plan;
  }
  get planTrouble(): Trouble | undefined {
    return this.#planning.trouble;
  }
  get route(): RouteView | undefined {
    return this.#planning.route;
  }
  get routeGone(): boolean {
    return this.#planning.routeGone;
  }
  get searching(): boolean {
    return this.#planning.searching;
  }
  get stopping(): boolean {
    return this.#planning.stopping;
  }
  get trying(): boolean {
    return this.#planning.trying;
  }
  /** The plan on screen belongs to the document as it is now. */
  get planIsCurrent(): boolean {
    return this.#planning.isFor(this.visit);
  }
  /** It is the best that a search had when it was stopped. */
  get planIsStopped(): boolean {
    return this.planIsCurrent && this.#planning.stopped;
  }
  planNow(): Promise<void> {
    return this.#planning.now();
  }
  stopHere(): Promise<void> {
    return this.#planning.stopHere();
  }
  searchOn(): Promise<void> {
    return this.#planning.searchOn();
  }
  stopPlan(): void {
    this.#planning.stop();
  }

  /**
   * Bowls of the colourist's own; none = the found ones again. The plan screen asks what they do. `route` is the way over
   * several steps that they come from; bowls that change later stay on it.
   */
  tryBowls(bowls: Bowl[], route?: RouteView): () => void {
    const before = this.route;
    if (route || !bowls.length) this.#planning.take(route);
    const way = route?.kind ?? (bowls.length ? this.visit.way : undefined);
    const undo = this.#change({ ...this.visit, bowls, way: way ?? '' }, before);
    // The plan screen, which asks, has not heard of it.
    if (hand.held) void this.planNow();
    return undo;
  }

  /** Leaves off everything but storing; ends once the last change is stored or, with the server gone, laid down here. */
  async close(): Promise<void> {
    hand.forget(this);
    hand.forget(this.#aim);
    this.#assess.stop();
    clearTimeout(this.#aimTimer);
    this.#aim.stop();
    this.#reach.stop();
    this.mixing.stop();
    this.stopPlan();
    if (this.saving === 'waiting') this.#keep();
    await this.#sending;
    if (this.saving === 'waiting') await this.save();
    // What came before it was ours.
    if (this.saving === 'waiting' && !this.saveTrouble) await this.save();
    await Promise.all([this.#keeping, this.#dropping]);
  }

  /** Entry number of the document as it is stored. */
  get storedSeq(): number {
    return this.#seq;
  }

  /** It was handed in: nothing of it stays on this device. */
  ended(at: string | undefined): void {
    this.handedInAt = at;
    this.#drop();
    void this.facts.load();
  }

  /** Stores no more: whoever opens the visit next hands its draft in. */
  async rest(): Promise<void> {
    this.#rests = true;
    clearTimeout(this.#timer);
    await this.ending.rest();
    await this.#sending;
    await this.#dropping;
  }
}
