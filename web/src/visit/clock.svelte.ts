import type { Mark, Replanned, Running, Timeline } from '../api/types';
import * as api from '../api/visits';
import { Away, Refused } from '../api/client';
import { alarmsOf, isPast, type Alarm } from './alarms';
import type { Asked } from './comfort';
import { Latest } from './latest';
import { minuteAt, shifted } from './running';
import type { Work } from './work.svelte';

/** An alarm that is older when it is first seen is shown by the clock itself, not rung for. */
const RUNG_LATE = 2;

/** The running clock of an open visit: what time it is there, how the plan stands, what calls. */
export class Clock {
  now = $state(Date.now());
  /** What the server made of the marks it was told last. */
  #told = $state.raw<{ running: Running; answer: Replanned }>();
  ringing = $state.raw<Alarm[]>([]);
  /** Not looked at by any screen. */
  #heard: Record<string, true> = {};
  #asked = new Latest<Replanned>();
  readonly #work: Work;

  constructor(work: Work) {
    this.#work = work;
  }

  get running(): Running | undefined {
    return this.#work.visit.running;
  }

  #mine = $derived.by(() => {
    const { running } = this;
    const told = this.#told;
    return running && told?.running === running ? told.answer : undefined;
  });
  #shifted = $derived.by((): Timeline | undefined => {
    const { running } = this;
    return running && shifted(running.plan, running.marks ?? []);
  });

  get timeline(): Timeline | undefined {
    return this.#mine?.timeline ?? this.#shifted;
  }
  /** What the server says besides; undefined until it has answered for the marks as they are. */
  get answer(): Replanned | undefined {
    return this.#mine;
  }
  /** Stands still when everything was stopped or the visit has ended. */
  get minute(): number {
    const { running } = this;
    if (!running) return 0;
    return running.stopped_at ?? running.ended_at ?? Math.max(0, minuteAt(running, this.now));
  }
  get still(): boolean {
    return this.running?.stopped_at !== undefined || this.running?.ended_at !== undefined;
  }

  /** How it felt, whenever the client was asked. */
  readonly asked = $derived.by((): readonly Asked[] =>
    this.#work.facts
      .every('comfort')
      .flatMap(({ body }) => (body.at_min === undefined ? [] : [{ at: body.at_min, feels: body.feels }])),
  );
  /** The client was asked how it feels. */
  async feels(feels: Asked['feels']): Promise<void> {
    const at_min = Math.round(this.minute * 10) / 10;
    this.ringing = this.ringing.filter((alarm) => alarm.kind !== 'comfort');
    await this.#work.facts.tell('comfort', { feels, at_min });
  }

  /** The stop of a visit that has no running clock, until somebody says that it goes on. */
  get frozen(): { id: string; made_at: string } | undefined {
    const stop = this.#work.facts.last('stopped');
    if (this.running || this.#work.handedInAt || !stop) return undefined;
    return this.#work.facts.last('stopped.over')?.body.fact === stop.id ? undefined : stop;
  }
  async thaw(why: string): Promise<void> {
    const stop = this.frozen;
    if (stop) await this.#work.facts.tell('stopped.over', { fact: stop.id, why });
  }

  #alarms = $derived.by(() =>
    this.running && this.timeline && !this.still ? alarmsOf(this.running, this.timeline, this.asked) : [],
  );

  tick(): void {
    this.now = Date.now();
    if (!this.running || this.still) {
      if (this.ringing.length) this.ringing = [];
      return;
    }
    const due = this.#alarms.filter((a) => a.at <= this.minute && !this.#heard[a.id]);
    for (const alarm of due) this.#heard[alarm.id] = true;
    const fresh = due.filter((a) => this.minute - a.at < RUNG_LATE);
    if (this.ringing.some((a) => isPast(a, this.minute)))
      this.ringing = this.ringing.filter((a) => !isPast(a, this.minute));
    if (fresh.length) this.ringing = [...this.ringing, ...fresh].slice(-4);
  }

  quiet(alarm: Alarm): void {
    this.ringing = this.ringing.filter((one) => one !== alarm);
  }

  /** Asks for the plan as the marks leave it; with the server gone the shifted times stay. */
  async replan(): Promise<void> {
    const { running } = this;
    if (!running) return;
    const visit = this.#work.visit;
    try {
      const asked = { ...visit, options: { ...visit.options, now_min: Math.min(1440, this.minute) } };
      const answer = await this.#asked.run((signal) => api.replan(asked, signal));
      if (answer) this.#told = { running, answer };
    } catch (error) {
      if (!(error instanceof Away || error instanceof Refused)) throw error;
    }
  }

  #put(change: Partial<Running>): () => void {
    const { running, visit } = { running: this.running!, visit: this.#work.visit };
    return this.#work.change({ ...visit, running: { ...running, ...change } });
  }

  begin(running: Running): () => void {
    this.#heard = {};
    return this.#work.change({ ...this.#work.visit, running });
  }

  mark(...marks: Mark[]): () => void {
    const at = (minute: number) => Math.round(Math.max(0, minute) * 100) / 100;
    this.ringing = this.ringing.filter((a) => !marks.some((m) => a.id.startsWith(`${m.task}@`)));
    return this.#put({
      marks: [...(this.running!.marks ?? []), ...marks.map((m) => ({ ...m, at_min: at(m.at_min) }))],
    });
  }

  change(change: Partial<Running>): () => void {
    return this.#put(change);
  }
  replace(running: Running): () => void {
    return this.#work.change({ ...this.#work.visit, running });
  }

  /** Everything is put off: times stand still until somebody goes on. */
  stop(): void {
    if (this.running && !this.still) this.#put({ stopped_at: Math.round(this.minute * 100) / 100 });
    // With no clock to stop, that it was stopped is what stands still.
    if (!this.running && !this.frozen && !this.#work.handedInAt) void this.#work.facts.tell('stopped', {});
  }
  goOn(): void {
    const { stopped_at: _, ...running } = this.running!;
    this.#work.change({ ...this.#work.visit, running });
  }
  close(): void {
    this.#asked.stop();
  }
}
