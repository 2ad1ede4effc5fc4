import { renderStills } from '../../strand/still';
import { t } from '../../i18n/index.svelte';
import type { HairRow } from '../../visit/HairBoard.svelte';

/** The strands of a plan as one PNG, for records and print, on the neutral grey they are judged on. */
export function planStill(rows: readonly HairRow[]): Promise<Blob> {
  // As wide as the longest strip at the screen's largest scale, so that its words stay readable on paper.
  const longest = Math.max(...rows.map((row) => row.picture.lengthCm), 1);
  const width = Math.min(700, Math.max(360, longest * 26 + 64));
  return renderStills(
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
