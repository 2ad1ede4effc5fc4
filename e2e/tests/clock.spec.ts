import type { Page } from '@playwright/test';
import type { Salon } from '../support/server';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const id = 'demo-toner_on_lightened';
const hash = `#/visits/${id}/clock`;
const now = (page: Page) => page.getByRole('timer');
const done = (page: Page) => page.getByRole('button', { name: /^(Done|Start now)$/ });
const saved = (page: Page) => expect(page.getByRole('banner')).toContainText('· saved', { timeout: 30_000 });

async function handsOn(page: Page, salon: Salon) {
  await page.clock.install();
  await open(page, salon, hash);
  await page.getByRole('button', { name: 'Hands on' }).click({ timeout: 180_000 });
  await expect(now(page)).toBeVisible();
  await saved(page);
}
const running = async (page: Page, salon: Salon) =>
  (await (await page.request.get(`${salon.url}api/v1/visits/${id}`)).json()).document.running;

test('the plan runs on by itself, and a mark moves it', async ({ page, salon }) => {
  await handsOn(page, salon);
  await expect(page.getByText('Prepare: gown, barrier, sections').first()).toBeVisible();
  await expect(now(page)).toHaveText(/^[45]:\d\d$/);
  await page.clock.fastForward('06:00');
  await expect(page.getByText(/^Mix bowl A$/).first()).toBeVisible();
  // Back-dated: it was done two minutes ago.
  await page.getByRole('button', { name: 'It was earlier …' }).click();
  await page.getByRole('radio', { name: '1 min ago', exact: true }).check({ force: true });
  await page.getByRole('button', { name: 'It was done then' }).click();
  await expect(page.getByText(/^Bowl A on /).first()).toBeVisible();
  await saved(page);
  expect((await running(page, salon)).marks).toEqual([
    { task: 'mix:A:1', what: 'done', at_min: expect.closeTo(5, 0) },
  ]);
  await page.getByRole('button', { name: 'Take back the last change' }).click();
  await expect.poll(async () => (await running(page, salon)).marks ?? []).toEqual([]);
});

test('by key, knuckle or pedal the work goes on', async ({ page, salon }) => {
  await handsOn(page, salon);
  await page.locator('main').focus();
  await page.keyboard.press('PageDown');
  await expect(page.getByText('Done: Prepare: gown, barrier, sections.')).toBeVisible();
  await page.keyboard.press(' ');
  await expect.poll(async () => (await running(page, salon)).marks.length).toBe(2);
});

test('the server goes and comes back in the middle of a visit', async ({ page, salon, watch }) => {
  watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  await handsOn(page, salon);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await salon.stop();
  await done(page).click();
  await expect(page.getByRole('banner')).toContainText('not saved yet');
  await expect(page.getByText(/^Mix bowl A$/).first()).toBeVisible();
  await page.clock.runFor(2000);
  await page.reload(); // with nobody there: bowls and times are on a head
  await expect(now(page)).toBeVisible();
  await expect(page.getByText(/^Mix bowl A$/).first()).toBeVisible();
  await expect(page.getByText(/No server: times are moved by your marks/)).toBeVisible();
  await salon.start();
  await page.clock.runFor(10_000);
  await saved(page);
  expect((await running(page, salon)).marks.length).toBe(1);
});

test('a reload without the server opens the running visit though all of it was stored', async ({
  page,
  salon,
  watch,
}) => {
  watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  await handsOn(page, salon);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await salon.stop();
  await page.reload();
  await expect(now(page)).toBeVisible();
  await expect(page.getByText(/No server: times are moved by your marks/)).toBeVisible();
  await page.goto(`${salon.url}#/visits/${id}/weigh`);
  await expect(page.getByRole('region', { name: /^Weigh bowl A/ })).toBeVisible();
  await salon.start();
});

test('a second device sees the marks of the first', async ({ page, salon, context }) => {
  await handsOn(page, salon);
  const other = await context.newPage();
  await open(other, salon, hash);
  await expect(now(other)).toBeVisible();
  await done(page).click();
  await saved(page);
  await expect(other.getByText(/^Mix bowl A$/).first()).toBeVisible({ timeout: 15_000 });
  // And the first sees what the second does: nothing of either is lost.
  await done(other).click();
  await page.clock.runFor(4000);
  await expect(page.getByText(/^Bowl A on /).first()).toBeVisible({ timeout: 15_000 });
  await expect.poll(async () => (await running(page, salon)).marks.length).toBe(2);
});

test('stop now freezes the clocks and says what was on the hair', async ({ page, salon }) => {
  await handsOn(page, salon);
  await page.clock.fastForward('20:00');
  await page.getByRole('button', { name: 'Stop now' }).click();
  const sheet = page.getByRole('dialog', { name: 'Stop now' });
  await expect(sheet).toContainText('call the emergency number at once');
  await expect(sheet).toContainText('on the hair');
  await expect(sheet).not.toContainText(/safe/i);
  await sheet.getByRole('button', { name: 'Close' }).last().click();
  const stood = await now(page).innerText();
  await page.clock.fastForward('03:00');
  await expect(now(page)).toHaveText(stood);
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(now(page)).not.toHaveText(stood);
});

test('an alarm names client and bowl, and is told to a screen reader', async ({ page, salon }) => {
  await handsOn(page, salon);
  await page.clock.fastForward('05:01');
  await page.clock.runFor(1000);
  await expect(page.getByRole('alert').filter({ hasText: 'Due now: mix A' })).toBeVisible();
  await page.getByRole('button', { name: 'Seen' }).first().click();
  await expect(page.getByRole('alert').filter({ hasText: 'Due now: mix A' })).toBeHidden();
});

test('a bowl is weighed part by part, with a way back from too much', async ({ page, salon }) => {
  await handsOn(page, salon);
  const { names, parts } = (await running(page, salon)).bowls[0];
  await page.getByRole('link', { name: /bowl/ }).click();
  const counter = page.getByRole('region', { name: /^Weigh bowl A/ });
  await expect(counter.getByRole('listitem').first()).toHaveAttribute('aria-current', 'step');
  await counter.getByLabel('The scale shows').fill(String(2 * parts[0].grams));
  await page.keyboard.press('Enter');
  await expect(page.getByText(`g of ${names[0]} booked`)).toBeVisible();
  await expect(counter.getByText(`too much of ${names[0]}`)).toBeVisible();
  await counter.getByRole('button', { name: /Let the others follow/ }).click();
  await expect(counter.getByText(/too much of/)).toBeHidden();
  // With nothing typed, what is asked for goes in; a pedal does.
  await page.locator('main').focus();
  for (let n = 1; n < parts.length; n++) await page.keyboard.press('PageDown');
  await expect(counter.getByText('All parts are in')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Label of the bowl' })).toContainText('use by');
  await expect.poll(async () => (await running(page, salon)).additions.length).toBe(parts.length);
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 844 });
  await expectNoSideScroll(page);
});

for (const scheme of ['light', 'dark'] as const) {
  test(`the clock is accessible in ${scheme} and fits small screens`, async ({ page, salon }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await handsOn(page, salon);
    await page.clock.fastForward('20:00');
    await page.clock.runFor(1000);
    await expectAccessible(page);
    for (const width of [320, 390]) {
      await page.setViewportSize({ width, height: 844 });
      await expectNoSideScroll(page);
    }
    const small = await page
      .locator('main button:visible')
      .evaluateAll((all) => all.map((b) => b.getBoundingClientRect()).filter((r) => r.height < 63.5).length);
    expect(small, 'targets under 64 px').toBe(0);
  });
}
