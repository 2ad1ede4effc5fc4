import type { Page } from '@playwright/test';
import { asked } from '../support/asked';
import { agreed, weighed } from '../support/chair';
import { SimulatedScale } from '../support/scale';
import { expect, open, test as base } from '../support/test';

const scale = new SimulatedScale();
const test = base.extend({ more: [scale.more, { scope: 'test' }] });
test.afterAll(() => scale.remove());

const chip = (page: Page, words: string) =>
  page.locator('label', { has: page.getByText(words, { exact: true }) });

async function planned(page: Page) {
  await expect(page.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({ timeout: 400_000 });
  await expect(page.getByRole('banner')).toContainText('· saved');
}

/** The plan runs on by itself to its end; whoever is asked how it feels says well. */
async function ranOut(page: Page) {
  await page.clock.install();
  await page.getByRole('navigation').getByRole('link', { name: /clock/ }).click();
  await expect(page.getByRole('timer')).toBeVisible();
  const over = page.getByRole('button', { name: 'Visit is over' });
  let times = 0;
  for (let step = 0; step < 150; step++) {
    await page.clock.fastForward('02:00');
    await page.clock.runFor(600);
    const how = page.getByRole('region', { name: 'How does it feel?' });
    if ((await how.isVisible()) && (await how.getByText('△').isVisible())) {
      await how.getByRole('button', { name: 'well', exact: true }).click();
      times++;
    }
    if (!(await page.getByRole('timer').isVisible())) break;
  }
  expect(times, 'times asked how it feels').toBeGreaterThan(0);
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
  await weighed(page, salon, scale);
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
  await weighed(page, salon, scale);
  await ranOut(page);
  await handedIn(page, 'The same again, please');

  // Both visits stand in what is kept of the client, newest first.
  await page.goto(`${salon.url}#/clients`);
  await page.getByRole('link', { name: /W\. V\./ }).click();
  await expect(page.getByText('“The same again, please”')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText('“As I wished”')).toBeVisible();
});
