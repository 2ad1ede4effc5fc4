import { send } from '../api/send';
import * as store from '../offline/store';

/** What needs no page: requests, and the device's own store. Inputs and results are plain data. */
export const jobs = {
  send,
  keepDraft: store.keep,
  readDraft: store.read,
  dropDraft: store.drop,
} satisfies Record<string, (input: never, signal?: AbortSignal) => Promise<unknown>>;

export type Jobs = typeof jobs;
export type Input<K extends keyof Jobs> = Parameters<Jobs[K]>[0];
export type Output<K extends keyof Jobs> = Awaited<ReturnType<Jobs[K]>>;

/** Page to worker, as JSON (text is copied faster than objects): do this; or stop it. */
export type Order =
  { readonly id: number; readonly job: keyof Jobs; readonly input: unknown } | { readonly stop: number };
/** Worker to page. */
export type Done =
  { readonly id: number; readonly result: unknown } | { readonly id: number; readonly failed: string };
