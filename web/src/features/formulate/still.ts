import { makeStill } from '../../strand/stills';
import { t } from '../../i18n/index.svelte';
import type { HairRow } from '../../visit/rows';

/** The strands of a plan as one PNG, for records and print, on the neutral grey they are judged on. */
export function planStill(rows: readonly HairRow[], scale = 3): Promise<Blob> {
  // As wide as the longest strip at the screen's largest scale, so that its words stay readable on paper.
  const longest = Math.max(...rows.map((row) => row.picture.lengthCm), 1);
  const width = Math.min(700, Math.max(360, longest * 26 + 64));
  return makeStill(
    rows.map(({ id, title, picture }) => ({ id, title, picture })),
    { width, scale, unit: t('unit.cm'), font: "'Inter Variable', sans-serif" },
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

/** 700 px over the 120 mm they take on paper: twice that is 300 dots an inch. */
const ON_PAPER = 2;

/** The picture as an image that is ready to be shown. */
export async function planImage(rows: readonly HairRow[]): Promise<HTMLImageElement> {
  const image = new Image();
  image.alt = t('plan.picture');
  image.src = URL.createObjectURL(await planStill(rows, ON_PAPER));
  await image.decode();
  return image;
}

const GAP = 8;
const TITLE = 18;

/** The strips that `board` shows, one below the other with their titles, as sharp as the screen and at once. */
export function screenStill(board: HTMLElement): HTMLCanvasElement | undefined {
  const rows = [...board.querySelectorAll<HTMLElement>('.board .row')].flatMap((row) => {
    const canvases = [...row.querySelectorAll<HTMLCanvasElement>('[role="img"] canvas')];
    return canvases[0] ? [{ canvases, title: row.querySelector('strong')?.textContent ?? '' }] : [];
  });
  const first = rows[0]?.canvases[0];
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (!first || !pen) return undefined;
  const sharp = first.width / Math.max(first.clientWidth, 1);
  const heights = rows.map(({ canvases }) => (canvases[0]?.height ?? 0) + (TITLE + GAP) * sharp);
  canvas.width = Math.max(...rows.map(({ canvases }) => canvases[0]?.width ?? 0));
  canvas.height = Math.ceil(heights.reduce((sum, height) => sum + height, 0));
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', t('plan.picture'));
  pen.font = `650 ${13 * sharp}px 'Inter Variable', sans-serif`;
  let y = 0;
  rows.forEach(({ canvases, title }, i) => {
    pen.fillText(title, 0, y + 13 * sharp);
    for (const one of canvases) pen.drawImage(one, 0, y + TITLE * sharp);
    y += heights[i] ?? 0;
  });
  return canvas;
}
