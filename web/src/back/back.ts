import { jobs, type Done, type Input, type Jobs, type Order, type Output } from './jobs';

interface Waiting {
  readonly job: keyof Jobs;
  readonly input: unknown;
  readonly signal?: AbortSignal;
  done(result: unknown): void;
  failed(error: unknown): void;
}

const stopped = () => new DOMException('stopped', 'AbortError');

/** The worker and what it was asked for. */
export class Back {
  readonly #worker: Worker;
  readonly #gone: () => void;
  #last = 0;
  readonly #waiting = new Map<number, Waiting>();

  /** `gone` is told when the worker cannot work; what it still owes is then done on the page. */
  constructor(worker: Worker, gone: () => void) {
    this.#worker = worker;
    this.#gone = gone;
    worker.onmessage = ({ data }: MessageEvent<Done>) => this.#hear(data);
    worker.onerror = () => this.#end();
  }

  ask(waiting: Waiting): void {
    const id = ++this.#last;
    this.#waiting.set(id, waiting);
    waiting.signal?.addEventListener('abort', () => {
      if (!this.#waiting.delete(id)) return;
      this.#send({ stop: id });
      waiting.failed(stopped());
    });
    const { job, input } = waiting;
    this.#send({ id, job, input });
  }

  #send(order: Order): void {
    this.#worker.postMessage(JSON.stringify(order));
  }

  #hear(done: Done): void {
    const waiting = this.#waiting.get(done.id);
    this.#waiting.delete(done.id);
    if ('failed' in done) waiting?.failed(new Error(done.failed));
    else waiting?.done(done.result);
  }

  #end(): void {
    this.#worker.terminate();
    this.#gone();
    const left = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { job, input, signal, done, failed } of left) {
      jobs[job](input as never, signal).then(done, failed);
    }
  }
}

let back: Back | null | undefined;

function open(): Back | null {
  if (typeof Worker !== 'function') return null;
  const worker = new Worker(new URL('./back-worker.ts', import.meta.url), { type: 'module' });
  return new Back(worker, () => (back = null));
}

/** Has a job done in the worker, or on the page where there is none. Rejects with an AbortError when stopped. */
export function run<K extends keyof Jobs>(job: K, input: Input<K>, signal?: AbortSignal): Promise<Output<K>> {
  if (signal?.aborted) return Promise.reject(stopped());
  if (back === undefined) back = open();
  const there = back;
  if (!there) return jobs[job](input as never, signal) as Promise<Output<K>>;
  return new Promise((resolve, reject) => {
    there.ask({ job, input, signal, done: (result) => resolve(result as Output<K>), failed: reject });
  });
}
