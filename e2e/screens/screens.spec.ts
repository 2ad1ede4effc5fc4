import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { expect, open, test } from '../support/test';

// The six pictures of docs/screens, each used by README or the tour; look at every one after making them.
const folder = fileURLToPath(new URL('../../docs/screens/', import.meta.url));
const sizes = {
  tablet: [1180, 820],
  phone: [390, 844],
  desk: [1600, 1000],
  paper: [718, 1046], // A4 at 96 px an inch, inside margins of a centimetre
} as const;
const visit = 'demo-salt_and_pepper_two_tones';
const hash = (step: string, id = visit) => `#/visits/${id}/${step}`;

async function drawn(page: Page) {
  await expect(page.locator('[data-drawn="webgl"], [data-drawn="plain"]').first()).toBeVisible();
  await page.waitForLoadState('networkidle');
  await expect(page.locator('[data-drawn="no"], [data-waiting]')).toHaveCount(0, { timeout: 120_000 });
  await settle(page);
}
async function planned(page: Page) {
  await expect(page.getByRole('complementary').getByRole('heading', { level: 2 }).first()).toBeVisible({
    timeout: 300_000,
  });
  await drawn(page);
}
const settle = (page: Page) => page.waitForTimeout(400);

interface Shot {
  name: string;
  size: keyof typeof sizes;
  dark?: boolean;
  at: string;
  ready: (page: Page) => Promise<void>;
  before?: (page: Page) => Promise<unknown>;
}

const shots: Shot[] = [
  { name: 'reading', size: 'tablet', at: hash('assess'), ready: drawn },
  {
    name: 'target',
    size: 'tablet',
    dark: true,
    at: hash('aim'),
    ready: async (page) => {
      await drawn(page);
      await expect(page.getByRole('grid')).toHaveAttribute('aria-busy', 'false', { timeout: 300_000 });
      await settle(page);
    },
  },
  { name: 'plan', size: 'desk', dark: true, at: hash('plan'), ready: planned },
  { name: 'plan', size: 'phone', at: hash('plan', 'demo-coloured_lengths_lighter'), ready: planned },
  {
    name: 'plan',
    size: 'paper',
    at: hash('plan'),
    before: (page) => page.addInitScript(() => (window.print = () => undefined)),
    ready: async (page) => {
      await planned(page);
      await page.getByRole('button', { name: 'Print the plan' }).click();
      await page.emulateMedia({ media: 'print' });
      await expect(page.getByRole('article').getByRole('img')).toBeVisible();
      await settle(page);
    },
  },
  {
    name: 'own-bowl',
    size: 'tablet',
    at: hash('plan', 'demo-all_over_brown'),
    ready: async (page) => {
      await planned(page);
      await page.getByRole('button', { name: 'Mix your own' }).click();
      const sheet = page.getByRole('dialog', { name: 'Your own bowl' });
      for (const name of ['4 natural', '5 natural', 'developer 6 %'])
        await sheet.getByRole('button', { name, exact: true }).click();
      await expect(sheet.getByText(/than the target|Not as it is/)).toBeVisible({ timeout: 60_000 });
      await settle(page);
    },
  },
];

test('the pictures of the documentation', async ({ browser, salon }) => {
  test.setTimeout(900_000);
  expect(shots).toHaveLength(6);
  mkdirSync(folder, { recursive: true });
  if (!process.env.ONLY)
    for (const old of readdirSync(folder)) if (old.endsWith('.png')) rmSync(folder + old);
  // The server's answers to the plans in these pictures; each is asked for once.
  const answers = new Map<string, string>();
  const only = process.env.ONLY;
  for (const shot of shots.filter((s) => !only || s.name.match(only))) {
    const [width, height] = sizes[shot.size];
    const context = await browser.newContext({
      viewport: { width, height },
      colorScheme: shot.dark ? 'dark' : 'light',
      reducedMotion: 'reduce',
      serviceWorkers: 'block',
      locale: 'en-GB',
      timezoneId: 'Europe/Paris',
    });
    const page = await context.newPage();
    await page.route('**/api/v1/plan', async (route) => {
      const asked = route.request().postData() ?? '';
      const body = answers.get(asked) ?? (await (await route.fetch({ timeout: 300_000 })).text());
      answers.set(asked, body);
      await route.fulfill({ body, contentType: 'application/json' });
    });
    await shot.before?.(page);
    await open(page, salon, shot.at);
    await shot.ready(page);
    await page.screenshot({
      path: `${folder}${shot.name}-${shot.size}-${shot.dark ? 'dark' : 'light'}.png`,
    });
    await context.close();
  }
});
