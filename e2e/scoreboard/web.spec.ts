import { writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import type { Locator, Page } from '@playwright/test';
import { pagesFirst, quantile, traceFrames } from '../support/frames';
import { expect, expectHair, open, test } from '../support/test';

const visit = 'demo-salt_and_pepper_two_tones';
const SLOWER = 4;
/** The figure is the middle one of so many. */
const RUNS = 5;
const figures: { key: string; value: number; unit: string; note: string }[] = [];
const rounded = (ms: number) => Math.round(ms * 100) / 100;

test.afterAll(() => {
  const file = process.env.FIGURES;
  if (file) writeFileSync(file, JSON.stringify(figures));
  else console.log(figures);
});

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where a button is. Looking for it runs the test's own script in the page, so it is done before anything is measured. */
async function placeOf(target: Locator): Promise<Point> {
  await target.scrollIntoViewIfNeeded();
  const box = await target.boundingBox();
  if (!box) throw new Error('nothing to hold');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function holdFor(page: Page, { x, y }: Point, ms: number): Promise<void> {
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.waitForTimeout(ms);
  await page.mouse.up();
  await page.waitForTimeout(300);
}

/** Holds both buttons of a stepper and writes down the page's script per frame, with a slowed processor and as it is. */
async function measureHold(
  page: Page,
  key: string,
  name: string,
  less: Locator,
  more: Locator,
): Promise<void> {
  const browser = page.context().browser();
  if (!browser) throw new Error('no browser to trace');
  const first = await pagesFirst(browser);
  const cdp = await page.context().newCDPSession(page);
  const [up, down] = [await placeOf(more), await placeOf(less)];
  for (const rate of [SLOWER, 1]) {
    await cdp.send('Emulation.setCPUThrottlingRate', { rate });
    await holdFor(page, up, 1500); // warm
    const runs: number[][] = [];
    for (let i = 0; i < RUNS; i++) {
      const frames = await traceFrames(browser, page, async () => {
        await holdFor(page, down, 2500);
        await holdFor(page, up, 2500);
      });
      expect(frames.length, `frames of ${name}`).toBeGreaterThan(20);
      runs.push(frames);
    }
    const within = runs.map((frames) => quantile(frames, 0.95)).sort((a, b) => a - b);
    const all = runs.flat();
    figures.push({
      key: rate === 1 ? `${key}_unslowed_p95.ms` : `${key}_p95.ms`,
      value: rounded(quantile(within, 0.5)),
      unit: 'ms',
      note:
        `${name} held, ${rate}x slower processor, hair drawn by software GL, load ${rounded(loadavg()[0]!)}, ` +
        `the page's thread ${first ? 'first in line' : 'in line with all others'}; median of ${RUNS} runs, ` +
        `${within.map(rounded).join(' ')}; ${all.length} frames, median ${rounded(quantile(all, 0.5))}, ` +
        `longest ${rounded(Math.max(...all))}; aim ${(8 * rate) / SLOWER}`,
    });
  }
}

test('script in each frame while a reading is held', async ({ page, salon }) => {
  await open(page, salon, `#/visits/${visit}/assess`);
  await expectHair(page, 5);
  for (const [key, name, button] of [
    ['web.frame_script', 'white', 'White'],
    ['web.frame_script_length', 'length of a span', 'Where regrowth ends'],
  ] as const) {
    const [less, more] = ['Less', 'More'].map((way) =>
      page.getByRole('button', { name: `${way}: ${button}`, exact: true }),
    );
    await measureHold(page, key, name, less!, more!);
  }
});

test('script in each frame while grams are held', async ({ page, salon }) => {
  await open(page, salon, `#/visits/${visit}/plan`);
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  await bowls.getByRole('button', { name: 'Change grams' }).first().click({ timeout: 300_000 });
  const [less, more] = [/^Less/, /^More/].map((name) => bowls.getByRole('button', { name }).first());
  await measureHold(page, 'web.frame_script_grams', 'grams', less!, more!);
});

declare global {
  interface Window {
    /** When each strip showed its first new picture since the tap, and its last. */
    shownAt: Map<object, { first: number; last: number }>;
    tappedAt: number;
  }
}

test('what-if from tap to picture', async ({ page, salon }) => {
  // A strip is shown when its bitmap is handed over or, where its hair stays as it is, its signs are drawn anew; the picture
  // is there when every strip is. All of them are shown once more when every scenario is in.
  await page.addInitScript(() => {
    window.shownAt = new Map();
    const shown = (on: object) =>
      requestAnimationFrame(() => {
        const at = performance.now();
        window.shownAt.set(on, { first: window.shownAt.get(on)?.first ?? at, last: at });
      });
    const show = ImageBitmapRenderingContext.prototype.transferFromImageBitmap;
    ImageBitmapRenderingContext.prototype.transferFromImageBitmap = function (bitmap) {
      show.call(this, bitmap);
      shown(this);
    };
    const clear = CanvasRenderingContext2D.prototype.clearRect;
    CanvasRenderingContext2D.prototype.clearRect = function (...at) {
      clear.apply(this, at);
      shown(this);
    };
  });
  await open(page, salon, `#/visits/${visit}/plan`);
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  await bowls.getByRole('button', { name: 'Change grams' }).first().click({ timeout: 300_000 });
  const more = bowls.getByRole('button', { name: /^More/ }).first();
  const waits: number[] = [];
  const wholes: number[] = [];
  for (let i = 0; i < 24; i++) {
    await page.waitForTimeout(400);
    await page.evaluate(() => {
      window.shownAt = new Map();
      const tapped = (event: Event) => (window.tappedAt = event.timeStamp);
      addEventListener('pointerdown', tapped, { once: true, capture: true });
    });
    await more.click();
    await page.waitForFunction(() => window.shownAt.size > 0);
    await expect(bowls.locator('[aria-busy="true"]')).toHaveCount(0);
    await page.waitForTimeout(400);
    const [picture, whole] = await page.evaluate(() => {
      const times = [...window.shownAt.values()];
      return [
        Math.max(...times.map((t) => t.first)) - window.tappedAt,
        Math.max(...times.map((t) => t.last)) - window.tappedAt,
      ] as const;
    });
    waits.push(picture);
    wholes.push(whole);
  }
  const settled = waits.slice(4);
  figures.push({
    key: 'web.whatif_to_picture.ms',
    value: rounded(quantile(settled, 0.5)),
    unit: 'ms',
    note: `tap on a gram until every strip shows its new picture, loopback, median of ${settled.length}; 95 % within ${rounded(quantile(settled, 0.95))}; with every scenario ${rounded(quantile(wholes.slice(4), 0.5))}; aim 100`,
  });
});
