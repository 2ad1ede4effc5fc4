import { jobs, type Done, type Order } from './jobs';

/** Requests and the device's store off the page's thread. */

const under = new Map<number, AbortController>();
const tell = (done: Done) => (self as unknown as Worker).postMessage(done);

self.onmessage = ({ data }: MessageEvent<Order>) => {
  if ('stop' in data) {
    under.get(data.stop)?.abort();
    return;
  }
  const { id, job, input } = data;
  const stop = new AbortController();
  under.set(id, stop);
  jobs[job](input as never, stop.signal)
    .then(
      (result) => tell({ id, result }),
      (error: unknown) => tell({ id, failed: String(error) }),
    )
    .finally(() => under.delete(id));
};
