import { afterEach, describe, expect, it, vi } from 'vitest';
import { Back, run } from './back';
import type { Done, Order } from './jobs';

function fake() {
  const orders: Order[] = [];
  const worker = {
    postMessage: (text: string) => orders.push(JSON.parse(text) as Order),
    terminate: vi.fn(),
    onmessage: null as ((event: { data: Done }) => void) | null,
    onerror: null as (() => void) | null,
  };
  return {
    orders,
    worker: worker as unknown as Worker,
    answer: (data: Done) => worker.onmessage?.({ data }),
    fail: () => worker.onerror?.(),
  };
}
const ask = { method: 'GET', url: 'http://here/api/v1/levels', headers: {}, kind: 'levels' };
const askOf = (back: Back, signal?: AbortSignal) =>
  new Promise((done, failed) => back.ask({ job: 'send', input: ask, signal, done, failed }));

afterEach(() => vi.unstubAllGlobals());

describe('work off the page', () => {
  it('gives each answer to whoever asked', async () => {
    const { orders, worker, answer } = fake();
    const back = new Back(worker, () => undefined);
    const both = [askOf(back), askOf(back)];
    const ids = orders.map((order) => ('id' in order ? order.id : -1));
    answer({ id: ids[1]!, result: 'second' });
    answer({ id: ids[0]!, failed: 'the store is full' });
    await expect(both[0]).rejects.toThrow('the store is full');
    await expect(both[1]).resolves.toBe('second');
  });

  it('stops what nobody waits for', async () => {
    const { orders, worker, answer } = fake();
    const back = new Back(worker, () => undefined);
    const stop = new AbortController();
    const asked = askOf(back, stop.signal);
    stop.abort();
    await expect(asked).rejects.toMatchObject({ name: 'AbortError' });
    const [first, second] = orders as [{ id: number }, { stop: number }];
    expect(second.stop).toBe(first.id);
    answer({ id: first.id, result: 'too late' });
  });

  it('does on the page what a broken worker still owes', async () => {
    vi.stubGlobal('fetch', () => Promise.resolve(new Response('{"levels":[]}')));
    const { worker, fail } = fake();
    const gone = vi.fn();
    const back = new Back(worker, gone);
    const asked = askOf(back);
    fail();
    expect(gone).toHaveBeenCalled();
    await expect(asked).resolves.toEqual({ status: 200, parcel: { text: '{"levels":[]}' } });
  });

  it('works on the page where there is no worker', async () => {
    vi.stubGlobal('Worker', undefined);
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no network')));
    await expect(run('send', ask)).resolves.toEqual({ away: true });
    const stop = new AbortController();
    stop.abort();
    await expect(run('send', ask, stop.signal)).rejects.toMatchObject({ name: 'AbortError' });
  });
});
