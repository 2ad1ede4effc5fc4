import { renderStills, type StillOptions, type StillStrip } from './still';
import type { StillAnswer, StillOrder } from './still-worker';

/**
 * A PNG of several strips, made by a worker of its own so that neither the page nor its strips wait for it; on the page
 * where there is no worker. Rejects when a picture cannot be drawn.
 */
export function makeStill(strips: readonly StillStrip[], options: StillOptions): Promise<Blob> {
  if (typeof Worker !== 'function' || typeof OffscreenCanvas !== 'function') {
    return renderStills(strips, options);
  }
  const worker = new Worker(new URL('./still-worker.ts', import.meta.url), { type: 'module' });
  const made = new Promise<Blob>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<StillAnswer>) => {
      if ('picture' in data) resolve(data.picture);
      else reject(new Error(data.failed));
    };
    worker.onerror = (event) => reject(new Error(event.message || 'strand: no worker for the still'));
    worker.postMessage({ strips, options } satisfies StillOrder);
  });
  return made.finally(() => worker.terminate());
}
