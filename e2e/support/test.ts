import { AxeBuilder } from '@axe-core/playwright';
import { expect, test as base, type Page } from '@playwright/test';
import { Salon } from './server';

/** What no page may ever do; checked at the end of every test. */
export interface Watch {
  /** Messages that a test expects (a stopped server, say). */
  allow: RegExp[];
}

export const test = base.extend<{ watch: Watch; salon: Salon; more: readonly string[] }>({
  /** More words for the server's command line. */
  more: [[], { option: true }],
  // A new one for each test: what one leaves in a visit is no other's business.
  salon: async ({ more }, use) => {
    const salon = new Salon(more);
    await salon.start();
    await use(salon);
    await salon.remove();
  },
  watch: [
    async ({ page, salon }, use) => {
      const watch: Watch = { allow: [] };
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
      page.on('console', (message) => {
        if (message.type() === 'error') faults.push(`console: ${message.text()}`);
      });
      page.on('request', (request) => {
        const url = request.url();
        if (!url.startsWith(salon.url) && !/^(blob|data):/.test(url)) faults.push(`left the origin: ${url}`);
      });
      await use(watch);
      expect(faults.filter((fault) => !watch.allow.some((known) => known.test(fault)))).toEqual([]);
    },
    { auto: true },
  ],
});

export { expect } from '@playwright/test';

/** No finding of axe at WCAG 2.2 A and AA or its best practices. */
export async function expectAccessible(page: Page): Promise<void> {
  const found = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
    .analyze();
  const lines = found.violations.map(
    (v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`,
  );
  expect(lines).toEqual([]);
}

/** Nothing sticks out sideways, once strips and ruler have measured their place. */
export async function expectNoSideScroll(page: Page): Promise<void> {
  const wide = () =>
    page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  await expect.poll(wide, { message: 'pixels that stick out' }).toBeLessThanOrEqual(0);
}

/** Opens a page of the app by its hash and waits until its heading is there. */
export async function open(page: Page, salon: Salon, hash = ''): Promise<void> {
  await page.goto(salon.url + hash);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

/** The hair is drawn: every strip says how. */
export async function expectHair(page: Page, strips: number): Promise<void> {
  // Drawn in software, and on a machine that may be busy with the search as well.
  const drawing = { timeout: 180_000 };
  await expect(page.locator('[data-drawn="webgl"], [data-drawn="plain"]')).toHaveCount(strips, drawing);
  await expect(page.locator('[data-waiting]')).toHaveCount(0, drawing);
}
