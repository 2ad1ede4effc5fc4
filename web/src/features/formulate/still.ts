import { makeStill } from '../../strand/stills';
import { t } from '../../i18n/index.svelte';
import type { HairRow } from '../../visit/HairBoard.svelte';

/** The strands of a plan as one PNG, for records and print, on the neutral grey they are judged on. */
export function planStill(rows: readonly HairRow[]): Promise<Blob> {
  // As wide as the longest strip at the screen's largest scale, so that its words stay readable on paper.
  const longest = Math.max(...rows.map((row) => row.picture.lengthCm), 1);
  const width = Math.min(700, Math.max(360, longest * 26 + 64));
  return makeStill(
    rows.map(({ id, title, picture }) => ({ id, title, picture })),
    { width, scale: 4, unit: t('unit.cm'), font: "'Inter Variable', sans-serif" },
  );
}

/** Hands the picture to the browser as a file to keep. */
export function offer(picture: Blob, name: string): void {
  const url = URL.createObjectURL(picture);
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  // The download reads the address after this turn; a minute is ample.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** The picture as an image that is ready to be shown; its address is given back by `forget`. */
export async function planImage(rows: readonly HairRow[]): Promise<HTMLImageElement> {
  const image = new Image();
  image.alt = t('plan.picture');
  image.src = URL.createObjectURL(await planStill(rows));
  await image.decode();
  return image;
}

export const forget = (image: HTMLImageElement): void => URL.revokeObjectURL(image.src);
