import { paintHair, watchPainter } from './surface';
import type { Answer, Order } from './studio';

/** The drawing of hair off the page's thread: orders in, finished pictures out, in the order they were asked for. */

const tell = (answer: Answer, hand: Transferable[] = []) =>
  (self as unknown as Worker).postMessage(answer, hand);

if (typeof OffscreenCanvas === 'function') {
  self.onmessage = ({ data }: MessageEvent<Order>) => {
    const { source, drawn } = paintHair(data.job);
    const picture = (source as OffscreenCanvas).transferToImageBitmap();
    tell({ id: data.id, picture, drawn }, [picture]);
  };
  watchPainter(() => tell({ again: true }));
} else tell({ unable: true });
