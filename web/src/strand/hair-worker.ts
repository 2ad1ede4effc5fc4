import { paintHair, watchPainter } from './surface';
import type { Answer, Orders } from './studio';

/** The drawing of hair off the page's thread: orders in, their finished pictures out together. */

const tell = (answer: Answer, hand: Transferable[] = []) =>
  (self as unknown as Worker).postMessage(answer, hand);

if (typeof OffscreenCanvas === 'function') {
  self.onmessage = ({ data }: MessageEvent<string>) => {
    const finished = (JSON.parse(data) as Orders).map(({ id, job }) => {
      const { source, drawn } = paintHair(job);
      return { id, picture: (source as OffscreenCanvas).transferToImageBitmap(), drawn };
    });
    tell(
      { finished },
      finished.map(({ picture }) => picture),
    );
  };
  watchPainter(() => tell({ again: true }));
} else tell({ unable: true });
