import type { Page } from '@playwright/test';
import { asked } from '../support/asked';
import { SimulatedScale } from '../support/scale';
import type { Salon } from '../support/server';
import { expect, open, test as base } from '../support/test';

const DISH = 162.3;
const scale = new SimulatedScale();
const test = base.extend({ more: [scale.more, { scope: 'test' }] });
test.afterAll(() => scale.remove());

const visitOf = (page: Page) => /#\/visits\/([^/]+)/.exec(page.url())![1]!;
const running = async (page: Page, salon: Salon) =>
  (await (await page.request.get(`${salon.url}api/v1/visits/${visitOf(page)}`)).json()).document.running;
const chip = (page: Page, words: string) =>
  page.locator('label', { has: page.getByText(words, { exact: true }) });

async function planned(page: Page) {
  await expect(page.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({ timeout: 400_000 });
  await expect(page.getByRole('banner')).toContainText('· saved');
}

async function agreed(page: Page) {
  await page.getByRole('link', { name: /agree/ }).click();
  const pad = page.getByRole('img', { name: 'Draw the name here' });
  await pad.scrollIntoViewIfNeeded();
  const box = (await pad.boundingBox())!;
  await page.mouse.move(box.x + 40, box.y + 40);
  await page.mouse.down();
  for (let i = 1; i < 8; i++) await page.mouse.move(box.x + 40 + i * 20, box.y + 40 + (i % 2) * 25);
  await page.mouse.up();
  await page.getByRole('button', { name: 'I agree' }).click();
  await page.getByRole('button', { name: 'Hands on: to the bowl' }).click();
}

/** Every part of the bowl on the counter goes in, by what the scale shows; returns the parts as they were asked for. */
async function weighed(page: Page, salon: Salon) {
  scale.shows(DISH);
  await expect(page.getByText('Put the bowl on, then tare').first()).toBeVisible();
  await page.locator('main').focus();
  await page.keyboard.press('PageDown');
  await expect.poll(async () => (await running(page, salon))?.bowls?.length).toBeGreaterThan(0);
  const { parts } = (await running(page, salon)).bowls[0] as { parts: { grams: number }[] };
  let gross = DISH;
  for (const [n, part] of parts.entries()) {
    gross += part.grams;
    scale.shows(gross);
    await expect(page.locator('.counter .figure')).toHaveText(/^[+−-]?0\.\d g$/);
    await page.keyboard.press('PageDown'); // a pedal books it
    await expect
      .poll(async () => (await running(page, salon)).additions?.length ?? 0, `part ${n + 1} of bowl A`)
      .toBe(n + 1);
  }
  return parts;
}

/** The plan runs on by itself to its end; whoever is asked how it feels says well. */
async function ranOut(page: Page) {
  await page.clock.install();
  await page.getByRole('navigation').getByRole('link', { name: /clock/ }).click();
  await expect(page.getByRole('timer')).toBeVisible();
  const over = page.getByRole('button', { name: 'Visit is over' });
  let asked = 0;
  for (let step = 0; step < 150; step++) {
    await page.clock.fastForward('02:00');
    await page.clock.runFor(600);
    const how = page.getByRole('region', { name: 'How does it feel?' });
    if ((await how.isVisible()) && (await how.getByText('△').isVisible())) {
      await how.getByRole('button', { name: 'well', exact: true }).click();
      asked++;
    }
    if (!(await page.getByRole('timer').isVisible())) break;
  }
  expect(asked, 'times asked how it feels').toBeGreaterThan(0);
  await over.click();
  await page.clock.resume();
}

async function handedIn(page: Page, said: string) {
  await page
    .getByRole('navigation')
    .getByRole('link', { name: /result/ })
    .click();
  await page.getByLabel('What they said').fill(said);
  const level = page.getByRole('spinbutton', { name: /Level reached/ }).first();
  await level.focus();
  await page.keyboard.press('ArrowUp');
  await page.getByRole('button', { name: 'Hand in', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Your colour today' })).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText(/Come again between/)).toBeVisible();
}

test('a new head, then the same head returning: from reading to aftercare, weighed and timed', async ({
  page,
  salon,
}) => {
  test.setTimeout(900_000);
  await open(page, salon);
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByLabel('Label', { exact: true }).fill('W. V.');
  await asked(page);
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await page.getByRole('button', { name: 'level 6, natural' }).click();
  await page.getByRole('button', { name: '25', exact: true }).click();
  await chip(page, 'lengths').click();
  await page.getByRole('button', { name: 'level 6, natural' }).click();
  await page.getByRole('button', { name: /^Copy .* to all areas$/ }).click();
  await page.getByRole('link', { name: /target/ }).click();
  await page.getByRole('button', { name: 'level 5, natural' }).click();
  await page.getByRole('link', { name: 'To the plan' }).click();
  await planned(page);
  await agreed(page);
  const first = await weighed(page, salon);
  await ranOut(page);
  await handedIn(page, 'As I wished');

  await page.goto(salon.url);
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByRole('dialog').locator('label').filter({ hasText: 'W. V.' }).click();
  await expect(page.getByRole('checkbox', { name: 'The same target as last time' })).toBeChecked();
  await page.locator('label', { hasText: 'All asked' }).click();
  await page.getByRole('button', { name: 'Start with the plan' }).click();
  await planned(page);
  await agreed(page);
  const again = await weighed(page, salon);
  expect(again.length).toBeGreaterThan(0);
  expect(first.length).toBeGreaterThan(0);
  await ranOut(page);
  await handedIn(page, 'The same again, please');

  // Both visits stand in what is kept of the client, newest first.
  await page.goto(`${salon.url}#/clients`);
  await page.getByRole('link', { name: /W\. V\./ }).click();
  await expect(page.getByText('“The same again, please”')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText('“As I wished”')).toBeVisible();
});
