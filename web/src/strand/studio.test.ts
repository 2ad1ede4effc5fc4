import { describe, expect, it, vi } from 'vitest';
import { Studio, watchHair, type Answer, type Order, type Orders } from './studio';
import type { HairJob } from './surface';

/** A worker that does what the test says. */
function fake() {
  const orders: Order[] = [];
  const messages: number[] = [];
  const worker = {
    postMessage: (text: string) => {
      const batch = JSON.parse(text) as Orders;
      messages.push(batch.length);
      orders.push(...batch);
    },
    terminate: vi.fn(),
    onmessage: null as ((event: { data: Answer }) => void) | null,
    onerror: null as (() => void) | null,
  };
  const answer = (data: Answer) => worker.onmessage?.({ data });
  const finish = (...ids: number[]) =>
    answer({ finished: ids.map((id) => ({ id, picture: {} as ImageBitmap, drawn: 'webgl' })) });
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
const job = (seed: number) => ({ seed, picture: { spans: [] }, layout: {} }) as unknown as HairJob;

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
    expect(messages, 'a first picture waits for no other').toEqual([1, 1]);
    finish(orders[0]!.id);
    await turn();
    expect(orders.map((o) => o.job.seed)).toEqual([1, 10, 3]);
    finish(orders[2]!.id);
    finish(orders[1]!.id);
    expect(shown).toEqual([1, 3, 10]);
    ask(a, 4);
    ask(b, 11);
    await turn();
    expect(messages.slice(3), 'then one message a turn').toEqual([2]);
  });

  it('tells when all that was wished is shown, or gave way to newer wishes', async () => {
    const { orders, worker, finish } = fake();
    const studio = new Studio(worker, () => undefined);
    const [a, b] = [{}, {}];
    const heard: string[] = [];
    const ask = (owner: object, seed: number) =>
      studio.draw(owner, { job: job(seed), show: () => void heard.push(`${seed}`) });
    const listen = (name: string) => void studio.shown().then(() => heard.push(name));
    listen('nothing to wait for');
    await turn();
    ask(a, 1);
    ask(b, 10);
    listen('first');
    await turn();
    ask(a, 2);
    listen('second');
    finish(orders[1]!.id);
    await turn();
    expect(heard).toEqual(['nothing to wait for', '10']);
    finish(orders[0]!.id);
    await turn();
    expect(heard.slice(2)).toEqual(['1', 'first']);
    await turn();
    ask(a, 3);
    finish(orders[2]!.id);
    await turn();
    expect(heard.slice(4), '2 is shown, 3 is on its way').toEqual(['2', 'second']);
    listen('given up');
    ask(a, 4);
    studio.forget(a);
    finish(orders[3]!.id);
    await turn();
    expect(heard.slice(6)).toEqual(['3', 'given up']);
  });

  it('draws no hair again that a strip shows; its signs come with the pictures of the turn', async () => {
    const { orders, worker, finish, answer } = fake();
    const studio = new Studio(worker, () => undefined);
    const [a, b] = [{}, {}];
    const shown: string[] = [];
    const fan = (tone: number): HairJob => ({
      ...job(1),
      picture: { ...job(1).picture, spans: [{ fan: tone }] as never },
    });
    const ask = (owner: object, name: string, what: HairJob) =>
      studio.draw(owner, {
        job: what,
        show: (picture, drawn) => shown.push(`${name} ${picture ? 'new' : 'same'} ${drawn}`),
      });
    ask(a, 'a1', fan(1));
    ask(b, 'b1', job(10));
    ask(a, 'a2', fan(2)); // the same hair as what is under way
    await turn();
    finish(orders[0]!.id, orders[1]!.id);
    await vi.waitFor(() => expect(shown).toEqual(['a1 new webgl', 'b1 new webgl', 'a2 same webgl']));
    ask(a, 'a3', fan(3));
    ask(b, 'b2', job(11));
    await new Promise((go) => setTimeout(go));
    expect(shown, 'a waits for b').toHaveLength(3);
    expect(orders.map(({ job: { seed } }) => seed)).toEqual([1, 10, 11]);
    finish(orders[2]!.id);
    await vi.waitFor(() => expect(shown.slice(3)).toEqual(['b2 new webgl', 'a3 same webgl']));
    // A driver that was lost has lost the pictures too.
    answer({ again: true });
    ask(a, 'a4', fan(3));
    await turn();
    expect(orders).toHaveLength(4);
  });

  it('keeps nobody waiting when the worker is gone', async () => {
    const { worker, fail } = fake();
    const studio = new Studio(worker, () => undefined);
    studio.draw({}, { job: job(1), show: () => undefined });
    const told = studio.shown();
    fail();
    await told;
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
