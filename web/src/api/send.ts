import { pack, type Parcel } from './parcel';

/** One request as plain data. */
export interface Ask {
  readonly method: string;
  /** Absolute: a worker's own address is another one than the page's. */
  readonly url: string;
  readonly headers: Record<string, string>;
  readonly body?: string;
  /** What is asked, and which answer to it the page has: see pack. */
  readonly kind: string;
  readonly has?: number;
}

/** What came back; `away` = the server did not answer. */
export type Reply = { readonly status: number; readonly parcel: Parcel } | { readonly away: true };

/** The only place that calls the network. Rejects when `signal` stops it. */
export async function send({ url, kind, has, ...ask }: Ask, signal?: AbortSignal): Promise<Reply> {
  let text: string;
  let response: Response;
  try {
    response = await fetch(url, { ...ask, signal, cache: 'no-store' });
    text = await response.text();
  } catch (error) {
    if (signal?.aborted) throw error;
    return { away: true };
  }
  return { status: response.status, parcel: pack(text, kind, has) };
}
