import { describe, expect, it, vi } from 'vitest';
import { Studio, watchHair, type Answer, type Order, type Orders } from './studio';
import type { HairJob } from './surface';

/** A worker that does what the test says. */
function fake() {
  const orders: Order[] = [];
  const messages: number[] = [];
  const worker = {
    postMessage: (batch: Orders) => {
      messages.push(batch.length);
      orders.push(...batch);
    },
    terminate: vi.fn(),
    onmessage: null as ((event: { data: Answer }) => void) | null,
    onerror: null as (() => void) | null,
  };
  const answer = (data: Answer) => worker.onmessage?.({ data });
  const finish = (id: number) => answer({ id, picture: {} as ImageBitmap, drawn: 'webgl' });
  return {
    orders,
    messages,
    worker: worker as unknown as Worker,
    fail: () => worker.onerror?.(),
    answer,
    finish,
    terminate: worker.terminate,
  };
}
/** Orders leave at the end of the turn. */
const turn = () => Promise.resolve();
const job = (seed: number) => ({ seed }) as HairJob;

describe('drawing by a worker', () => {
  it('has one drawing under way for each strip and takes the newest next', async () => {
    const { orders, messages, worker, finish } = fake();
    const studio = new Studio(worker, () => undefined);
    const [a, b] = [{}, {}];
    const shown: number[] = [];
    const ask = (owner: object, seed: number) =>
      studio.draw(owner, { job: job(seed), show: () => void shown.push(seed) });
    ask(a, 1);
    ask(b, 10);
    ask(a, 2);
    ask(a, 3);
    await turn();
    expect(orders.map((o) => o.job.seed)).toEqual([1, 10]);
    expect(messages, 'one message a turn').toEqual([2]);
    finish(orders[0]!.id);
    await turn();
    expect(orders.map((o) => o.job.seed)).toEqual([1, 10, 3]);
    finish(orders[2]!.id);
    finish(orders[1]!.id);
    expect(shown).toEqual([1, 3, 10]);
  });

  it('drops what is not wanted any more', async () => {
    const { orders, worker, finish } = fake();
    const studio = new Studio(worker, () => undefined);
    const strip = {};
    studio.draw(strip, { job: job(1), show: () => undefined });
    studio.draw(strip, { job: job(2), show: () => undefined });
    studio.forget(strip);
    await turn();
    finish(orders[0]!.id);
    await turn();
    expect(orders).toHaveLength(1);
  });

  it('hands back what is left when the worker fails or cannot draw', () => {
    for (const how of ['fails', 'cannot'] as const) {
      const { worker, fail, answer, terminate } = fake();
      let left: Map<object, { job: HairJob }> | undefined;
      const studio = new Studio(worker, (found) => (left = found));
      const [a, b] = [{}, {}];
      studio.draw(a, { job: job(1), show: () => undefined });
      studio.draw(b, { job: job(2), show: () => undefined });
      studio.draw(a, { job: job(3), show: () => undefined });
      if (how === 'fails') fail();
      else answer({ unable: true });
      expect(terminate).toHaveBeenCalled();
      expect([...left!.values()].map((wish) => wish.job.seed)).toEqual([3, 2]);
    }
  });

  it('passes on that the driver was lost or came back', () => {
    const { worker, answer } = fake();
    new Studio(worker, () => undefined);
    const told = vi.fn();
    const stop = watchHair(told);
    answer({ again: true });
    stop();
    answer({ again: true });
    expect(told).toHaveBeenCalledTimes(1);
  });
});
