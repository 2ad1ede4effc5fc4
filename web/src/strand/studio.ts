import { drawLater, drawnLater, dropLater } from './schedule';
import { paintHair, watchPainter, type Drawn, type HairJob, type Source } from './surface';

/** Where hair is drawn: by a worker, so that the page stays free, or on the page where there is none. */

export interface Order {
  readonly id: number;
  readonly job: HairJob;
}
/**
 * What one turn of the page orders together goes to the worker in one message, as JSON: text is copied faster than objects,
 * and tells whether hair is the same as before.
 */
export type Orders = readonly Order[];
export interface Finished {
  readonly id: number;
  readonly picture: ImageBitmap;
  readonly drawn: Drawn;
}
/** What was ordered together comes back together, so that one frame shows all of it. */
export type Answer =
  { readonly finished: readonly Finished[] } | { readonly again: true } | { readonly unable: true };

/** Called with each finished picture, or without one where the hair is still that of the last: only its signs differ. */
type Show = (picture: ImageBitmap | Source | undefined, drawn: Drawn) => void;

interface Wish {
  readonly job: HairJob;
  readonly show: Show;
}
/** A wish, its number (later ones have higher ones) and its order as text. */
interface Pending extends Wish {
  readonly nth: number;
  readonly text: string;
}

/** What hair depends on, without what is drawn over it. */
function bare({ picture, layout, ...how }: HairJob): HairJob {
  return {
    ...how,
    picture: {
      ...picture,
      spans: picture.spans.map((span) => ({ ...span, fan: undefined, bowls: undefined })),
    },
    layout: { ...layout, joins: [], letters: [], fans: [], marks: [] },
  };
}

const watchers = new Set<() => void>();
const tellAll = () => watchers.forEach((tell) => tell());

/**
 * One worker and its orders: one under way for each owner; of those that come meanwhile the newest is next. An owner is what
 * shows the pictures: hair that it shows is not drawn again.
 */
export class Studio {
  readonly #worker: Worker;
  readonly #gone: (left: Map<object, Wish>) => void;
  readonly #ids = new WeakMap<object, number>();
  #last = 0;
  readonly #under = new Map<number, { owner: object; wish: Pending }>();
  readonly #next = new Map<object, Pending>();
  /** What each strip shows. */
  #shows = new WeakMap<object, { readonly text: string; readonly drawn: Drawn; readonly nth: number }>();
  #outbox: { readonly id: number; readonly owner: object; readonly text: string }[] = [];
  #wishes = 0;
  #listeners: { readonly upTo: number; readonly tell: () => void }[] = [];

  /** `gone` is told when the worker cannot draw, with what is still to be drawn. */
  constructor(worker: Worker, gone: (left: Map<object, Wish>) => void) {
    this.#worker = worker;
    this.#gone = gone;
    worker.onmessage = ({ data }: MessageEvent<Answer>) => this.#hear(data);
    worker.onerror = () => this.#end();
  }

  draw(owner: object, { job, show }: Wish): void {
    const wish = { job, show, nth: ++this.#wishes, text: JSON.stringify(bare(job)) };
    let id = this.#ids.get(owner);
    if (id === undefined) this.#ids.set(owner, (id = ++this.#last));
    if (this.#under.has(id)) this.#next.set(owner, wish);
    else this.#begin(id, owner, wish);
  }

  forget(owner: object): void {
    this.#next.delete(owner);
    this.#listen();
  }

  /** Ends once all that was wished until now is shown, or gave way to newer wishes. */
  shown(): Promise<void> {
    return new Promise((tell) => {
      this.#listeners.push({ upTo: this.#wishes, tell });
      this.#listen();
    });
  }

  #listen(): void {
    const open = [...[...this.#under.values()].map(({ wish }) => wish), ...this.#next.values()];
    const oldest = Math.min(...open.map(({ nth }) => nth));
    const due = this.#listeners.filter(({ upTo }) => upTo < oldest);
    this.#listeners = this.#listeners.filter(({ upTo }) => upTo >= oldest);
    due.forEach(({ tell }) => tell());
  }

  #begin(id: number, owner: object, wish: Pending): void {
    if (this.#shows.get(owner)?.text === wish.text) this.#keep(owner, wish);
    else this.#send(id, owner, wish);
  }

  /** The hair stays; what stands on it changes together with the pictures of this turn. */
  #keep(owner: object, wish: Pending): void {
    queueMicrotask(
      () =>
        void this.shown().then(() => {
          const shows = this.#shows.get(owner);
          if (shows?.text !== wish.text || shows.nth > wish.nth) return;
          this.#shows.set(owner, { ...shows, nth: wish.nth });
          wish.show(undefined, shows.drawn);
        }),
    );
  }

  #send(id: number, owner: object, wish: Pending): void {
    this.#under.set(id, { owner, wish });
    if (this.#outbox.length === 0) queueMicrotask(() => this.#post());
    this.#outbox.push({ id, owner, text: wish.text });
  }

  #post(): void {
    // What changes together comes together; a strip that shows nothing yet need not wait for others.
    const together = this.#outbox.filter(({ owner }) => this.#shows.has(owner));
    const alone = this.#outbox.filter(({ owner }) => !this.#shows.has(owner));
    this.#outbox = [];
    for (const orders of [together, ...alone.map((order) => [order])])
      if (orders.length > 0)
        this.#worker.postMessage(`[${orders.map(({ id, text }) => `{"id":${id},"job":${text}}`).join(',')}]`);
  }

  #hear(answer: Answer): void {
    if ('again' in answer) {
      this.#shows = new WeakMap();
      return tellAll();
    }
    if ('unable' in answer) return this.#end();
    for (const { id, picture, drawn } of answer.finished) {
      const done = this.#under.get(id);
      this.#under.delete(id);
      if (!done) continue;
      const next = this.#next.get(done.owner);
      this.#next.delete(done.owner);
      this.#shows.set(done.owner, { text: done.wish.text, drawn, nth: done.wish.nth });
      done.wish.show(picture, drawn);
      if (next) this.#begin(id, done.owner, next);
    }
    this.#listen();
  }

  #end(): void {
    this.#worker.terminate();
    const left = new Map<object, Wish>();
    for (const { owner, wish } of this.#under.values()) left.set(owner, wish);
    for (const [owner, wish] of this.#next) left.set(owner, wish);
    this.#under.clear();
    this.#next.clear();
    this.#gone(left);
    this.#listen();
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

/** Ends once the hair that was asked for until now is on the page, so that what is said of it can appear with it. */
export const hairShown = (): Promise<void> => (studio ? studio.shown() : drawnLater());

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
