import { happened } from './happened';
import * as api from '../api/facts';
import type { Body, Fact, FactKind, NewFact, Told } from '../api/facts';
import { waiting } from '../offline/drafts';
import { troubleOf, type Trouble } from './failed';

/** What happened at one visit. Told while the server is silent, a fact waits sealed on this device. */
export class Facts {
  readonly id: string;
  kept = $state.raw<readonly Fact[]>([]);
  /** Not handed over yet. */
  waits = $state.raw<readonly NewFact[]>([]);
  trouble = $state.raw<Trouble>();
  loaded = $state(false);

  constructor(id: string) {
    this.id = id;
  }

  async load(): Promise<void> {
    const left = (await waiting.read(this.id)) ?? [];
    this.waits = [...left, ...this.waits.filter((one) => !left.some((other) => other.id === one.id))];
    try {
      this.kept = await api.factsOf(this.id);
      this.trouble = undefined;
      this.loaded = true;
    } catch (error) {
      this.trouble = troubleOf(error);
    }
    await this.again();
  }

  /** The newest of a kind, one that still waits among them. */
  last<K extends FactKind>(kind: K): { id: string; made_at: string; body: Body<K> } | undefined {
    const waits = this.waits.findLast((one) => one.kind === kind);
    const kept = this.kept.findLast((one): one is Told<K> => one.kind === kind);
    const found = waits ?? kept;
    return found?.body ? (found as unknown as { id: string; made_at: string; body: Body<K> }) : undefined;
  }

  /** All of a kind, in the order in which they were told. */
  every<K extends FactKind>(kind: K): { id: string; made_at?: string; body: Body<K> }[] {
    const all = [...this.kept, ...this.waits].filter((one) => one.kind === kind && one.body);
    return all as unknown as { id: string; made_at?: string; body: Body<K> }[];
  }

  async tell<K extends FactKind>(kind: K, body: Body<K>): Promise<void> {
    this.waits = [...this.waits, happened(kind, body)];
    await waiting.keep(this.id, this.waits);
    await this.again();
  }

  #handing: Promise<void> | undefined;
  /** Hands over what waits, in its order; what is refused is told and kept. */
  again(): Promise<void> {
    this.#handing ??= this.#hand().finally(() => (this.#handing = undefined));
    return this.#handing;
  }
  async #hand(): Promise<void> {
    for (let next = this.waits[0]; next; next = this.waits[0]) {
      try {
        const fact = await api.tellFact(this.id, next);
        this.kept = [...this.kept.filter((one) => one.id !== fact.id), fact];
        this.waits = this.waits.filter((one) => one.id !== fact.id);
        this.trouble = undefined;
        await waiting.keep(this.id, this.waits);
      } catch (error) {
        this.trouble = troubleOf(error);
        return;
      }
    }
  }

  /** What was refused is not told again. */
  async letGo(): Promise<void> {
    this.waits = this.waits.slice(1);
    this.trouble = undefined;
    await waiting.keep(this.id, this.waits);
    await this.again();
  }
}
