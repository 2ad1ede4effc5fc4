import inter from '@fontsource-variable/inter/files/inter-latin-opsz-normal.woff2?url';
import { renderStills, type StillOptions, type StillStrip } from './still';

/** Makes one picture off the page's thread, in the page's own type. */

export interface StillOrder {
  readonly strips: readonly StillStrip[];
  readonly options: StillOptions;
}
export type StillAnswer = { readonly picture: Blob } | { readonly failed: string };

const fonts = (self as unknown as { fonts: FontFaceSet }).fonts;

async function make({ strips, options }: StillOrder): Promise<Blob> {
  const face = new FontFace('Inter Variable', `url(${inter})`, { weight: '100 900' });
  fonts.add(await face.load());
  return renderStills(strips, options);
}

self.onmessage = ({ data }: MessageEvent<StillOrder>) => {
  make(data).then(
    (picture) => self.postMessage({ picture } satisfies StillAnswer),
    (error: unknown) => self.postMessage({ failed: String(error) } satisfies StillAnswer),
  );
};
