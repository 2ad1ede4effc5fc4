import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { expect, open, test } from '../support/test';

// At most 24 pictures are kept in docs/screens; look at every one of them after making them.
const folder = fileURLToPath(new URL('../../docs/screens/', import.meta.url));
const sizes = {
  tablet: [1180, 820],
  phone: [390, 844],
  desk: [1440, 900],
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

const french = (page: Page) => page.addInitScript(() => localStorage.setItem('strandline.language', 'fr'));
const shots: Shot[] = [
  { name: 'visits', size: 'tablet', at: '', ready: settle },
  {
    name: 'visits-empty',
    size: 'tablet',
    at: '',
    ready: settle,
    before: (page) => page.route('**/api/v1/visits', (route) => route.fulfill({ json: { visits: [] } })),
  },
  {
    name: 'visits-error',
    size: 'phone',
    dark: true,
    at: '',
    ready: settle,
    before: (page) => page.route('**/api/v1/visits', (route) => route.abort()),
  },
  {
    name: 'new-visit',
    size: 'tablet',
    dark: true,
    at: '',
    ready: async (page) => {
      await page.getByRole('button', { name: 'New visit' }).first().click();
      await settle(page);
    },
  },
  { name: 'before', size: 'tablet', at: hash('gate'), ready: settle },
  { name: 'reading', size: 'tablet', at: hash('assess'), ready: drawn },
  {
    name: 'reading',
    size: 'tablet',
    dark: true,
    at: hash('assess'),
    ready: drawn,
  },
  { name: 'reading', size: 'phone', at: hash('assess'), ready: drawn },
  {
    name: 'reading-long',
    size: 'desk',
    at: hash('assess'),
    ready: drawn,
    before: async (page) => {
      await french(page);
      await page.route(`**/api/v1/visits/${visit}`, async (route) => {
        const answer = await route.fetch();
        const saved = await answer.json();
        saved.document.client = 'Une cliente dont le nom a été écrit bien plus long qu’il n’aurait fallu';
        await route.fulfill({ json: saved });
      });
    },
  },
  { name: 'wanted', size: 'tablet', at: hash('aim'), ready: drawn },
  {
    name: 'wanted',
    size: 'tablet',
    dark: true,
    at: hash('aim'),
    ready: async (page) => {
      await page.getByRole('grid').getByRole('button', { name: 'level 7, gold' }).click();
      await drawn(page);
    },
  },
  { name: 'wanted', size: 'phone', dark: true, at: hash('aim'), ready: drawn },
  {
    name: 'wanted-words',
    size: 'tablet',
    at: hash('aim'),
    ready: async (page) => {
      await page.getByRole('radio', { name: 'words' }).check();
      await drawn(page);
    },
  },
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
  { name: 'plan', size: 'tablet', at: hash('plan'), ready: planned },
  { name: 'plan', size: 'phone', at: hash('plan'), ready: planned },
  {
    name: 'plan-routes',
    size: 'tablet',
    at: hash('plan', 'demo-coloured_lengths_lighter'),
    ready: async (page) => {
      await planned(page);
      await page.getByRole('region', { name: 'More than one step' }).scrollIntoViewIfNeeded();
      await settle(page);
    },
  },
  {
    name: 'plan-way-over-steps',
    size: 'tablet',
    at: hash('plan', 'demo-coloured_lengths_lighter'),
    ready: async (page) => {
      await planned(page);
      await page.getByRole('button', { name: /^See it: Take the old/ }).click();
      await expect(page.getByText(/^Shown: another way/)).toBeVisible({ timeout: 60_000 });
      await drawn(page);
    },
  },
  {
    name: 'plan-second-look',
    size: 'tablet',
    at: hash('plan', 'demo-my_own_bowls'),
    ready: async (page) => {
      await planned(page);
      const look = page.locator('summary', { hasText: 'Check these bowls' });
      await look.click();
      await expect(page.getByText('Smallest change that fixes it:').first()).toBeVisible({
        timeout: 120_000,
      });
      await look.evaluate((summary) => summary.scrollIntoView({ block: 'start' }));
      await settle(page);
    },
  },
  { name: 'plan', size: 'desk', dark: true, at: hash('plan'), ready: planned },
  {
    name: 'plan-french',
    size: 'tablet',
    at: hash('plan'),
    ready: planned,
    before: french,
  },
  {
    name: 'plan-error',
    size: 'tablet',
    at: hash('plan'),
    ready: drawn,
    before: (page) => page.route('**/api/v1/plan', (route) => route.abort()),
  },
  {
    name: 'hair-only',
    size: 'tablet',
    at: hash('plan'),
    ready: async (page) => {
      await planned(page);
      await page.getByRole('button', { name: 'Hair only' }).click();
      await drawn(page);
    },
  },
  {
    name: 'stop-now',
    size: 'tablet',
    at: hash('assess'),
    ready: async (page) => {
      await drawn(page);
      await page.getByRole('button', { name: 'Stop now' }).click();
      await settle(page);
    },
  },
];

test('pictures of every screen', async ({ browser, salon }) => {
  test.setTimeout(900_000);
  expect(shots.length).toBeLessThanOrEqual(24);
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
