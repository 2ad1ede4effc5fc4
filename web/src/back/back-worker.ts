import { jobs, type Done, type Order } from './jobs';

/** Requests and the device's store off the page's thread. */

const under = new Map<number, AbortController>();
const tell = (done: Done) => (self as unknown as Worker).postMessage(done);

self.onmessage = ({ data }: MessageEvent<string>) => {
  const order = JSON.parse(data) as Order;
  if ('stop' in order) {
    under.get(order.stop)?.abort();
    return;
  }
  const { id, job, input } = order;
  const stop = new AbortController();
  under.set(id, stop);
  jobs[job](input as never, stop.signal)
    .then(
      (result) => tell({ id, result }),
      (error: unknown) => tell({ id, failed: String(error) }),
    )
    .finally(() => under.delete(id));
};
