import { paintHair, watchPainter } from './surface';
import type { Answer, Orders } from './studio';

/** The drawing of hair off the page's thread: orders in, finished pictures out, in the order they were asked for. */

const tell = (answer: Answer, hand: Transferable[] = []) =>
  (self as unknown as Worker).postMessage(answer, hand);

if (typeof OffscreenCanvas === 'function') {
  self.onmessage = ({ data }: MessageEvent<Orders>) => {
    for (const { id, job } of data) {
      const { source, drawn } = paintHair(job);
      const picture = (source as OffscreenCanvas).transferToImageBitmap();
      tell({ id, picture, drawn }, [picture]);
    }
  };
  watchPainter(() => tell({ again: true }));
} else tell({ unable: true });
