import { drawLater, dropLater } from './schedule';
import { paintHair, watchPainter, type Drawn, type HairJob, type Source } from './surface';

/** Where hair is drawn: by a worker, so that the page stays free, or on the page where there is none. */

export interface Order {
  readonly id: number;
  readonly job: HairJob;
}
/** What one turn of the page orders goes to the worker in one message. */
export type Orders = readonly Order[];
export type Answer =
  | { readonly id: number; readonly picture: ImageBitmap; readonly drawn: Drawn }
  | { readonly again: true }
  | { readonly unable: true };

/** Called with each finished picture. */
type Show = (picture: ImageBitmap | Source, drawn: Drawn) => void;

interface Wish {
  readonly job: HairJob;
  readonly show: Show;
}

const watchers = new Set<() => void>();
const tellAll = () => watchers.forEach((tell) => tell());

/** One worker and its orders: one under way for each owner; of those that come meanwhile the newest is next. */
export class Studio {
  readonly #worker: Worker;
  readonly #gone: (left: Map<object, Wish>) => void;
  readonly #ids = new WeakMap<object, number>();
  #last = 0;
  readonly #under = new Map<number, { owner: object; wish: Wish }>();
  readonly #next = new Map<object, Wish>();
  #outbox: Order[] = [];

  /** `gone` is told when the worker cannot draw, with what is still to be drawn. */
  constructor(worker: Worker, gone: (left: Map<object, Wish>) => void) {
    this.#worker = worker;
    this.#gone = gone;
    worker.onmessage = ({ data }: MessageEvent<Answer>) => this.#hear(data);
    worker.onerror = () => this.#end();
  }

  draw(owner: object, wish: Wish): void {
    let id = this.#ids.get(owner);
    if (id === undefined) this.#ids.set(owner, (id = ++this.#last));
    if (this.#under.has(id)) this.#next.set(owner, wish);
    else this.#send(id, owner, wish);
  }

  forget(owner: object): void {
    this.#next.delete(owner);
  }

  #send(id: number, owner: object, wish: Wish): void {
    this.#under.set(id, { owner, wish });
    if (this.#outbox.length === 0) queueMicrotask(() => this.#post());
    this.#outbox.push({ id, job: wish.job });
  }

  #post(): void {
    this.#worker.postMessage(this.#outbox satisfies Orders);
    this.#outbox = [];
  }

  #hear(answer: Answer): void {
    if ('again' in answer) return tellAll();
    if ('unable' in answer) return this.#end();
    const done = this.#under.get(answer.id);
    this.#under.delete(answer.id);
    if (!done) return;
    const next = this.#next.get(done.owner);
    this.#next.delete(done.owner);
    if (next) this.#send(answer.id, done.owner, next);
    done.wish.show(answer.picture, answer.drawn);
  }

  #end(): void {
    this.#worker.terminate();
    const left = new Map([...this.#under.values()].map(({ owner, wish }) => [owner, wish]));
    for (const [owner, wish] of this.#next) left.set(owner, wish);
    this.#gone(left);
  }
}

const onPage = (owner: object, { job, show }: Wish) =>
  drawLater(owner, () => {
    const { source, drawn } = paintHair(job);
    show(source, drawn);
  });

let studio: Studio | null | undefined;

function open(): Studio | null {
  if (typeof Worker !== 'function' || typeof OffscreenCanvas !== 'function') return null;
  const worker = new Worker(new URL('./hair-worker.ts', import.meta.url), { type: 'module' });
  return new Studio(worker, (left) => {
    studio = null;
    left.forEach((wish, owner) => onPage(owner, wish));
  });
}

/** Draws for `owner` soon; a later call by the same owner replaces one that has not begun. */
export function drawSoon(owner: object, job: HairJob, show: Show): void {
  if (studio === undefined) studio = open();
  if (studio) studio.draw(owner, { job, show });
  else onPage(owner, { job, show });
}

/** Drops what `owner` still had to draw. */
export function forget(owner: object): void {
  studio?.forget(owner);
  dropLater(owner);
}

/** Calls `tell` when the graphics driver was lost or came back, so that strips draw again; returns the way to stop. */
export function watchHair(tell: () => void): () => void {
  watchers.add(tell);
  return () => watchers.delete(tell);
}
watchPainter(tellAll);
