import type { Page } from '@playwright/test';
import { daysAgo } from '../support/asked';
import { SimulatedScale } from '../support/scale';
import type { Salon } from '../support/server';
import { expect, expectAccessible, expectNoSideScroll, open, test as base } from '../support/test';

const scale = new SimulatedScale();
const test = base.extend({ more: [scale.more, { scope: 'test' }] });
// Hair is drawn in software beside it: a page may stand for a while.
test.use({ actionTimeout: 90_000 });
test.afterAll(() => scale.remove());

const idOf = (page: Page) => /#\/visits\/([^/]+)/.exec(page.url())![1]!;
const running = async (page: Page, salon: Salon) =>
  (await (await page.request.get(`${salon.url}api/v1/visits/${idOf(page)}`)).json()).document.running;

async function agree(page: Page) {
  await page.getByRole('link', { name: /agree/ }).click();
  const pad = page.getByRole('img', { name: 'Draw the name here' });
  await expect(pad).toBeVisible({ timeout: 180_000 });
  await pad.scrollIntoViewIfNeeded();
  const box = (await pad.boundingBox())!;
  await page.mouse.move(box.x + 40, box.y + 40);
  await page.mouse.down();
  for (let i = 1; i < 8; i++) await page.mouse.move(box.x + 40 + i * 20, box.y + 40 + (i % 2) * 25);
  await page.mouse.up();
  await page.getByRole('button', { name: 'I agree' }).click();
  await page.getByRole('button', { name: 'Hands on: to the bowl' }).click();
}

/** Every part of every bowl, by the scale and a pedal. */
async function weigh(page: Page, salon: Salon) {
  await expect
    .poll(async () => (await running(page, salon))?.bowls.length, { timeout: 30_000 })
    .toBeGreaterThan(0);
  const { bowls } = await running(page, salon);
  for (const { label, parts } of bowls) {
    const which = page
      .getByRole('group', { name: 'Which bowl' })
      .locator('label', { hasText: `bowl ${label}` });
    if (bowls.length > 1) await which.click();
    const counter = page.getByRole('region', { name: new RegExp(`^Weigh bowl ${label}`) });
    let gross = 150;
    scale.shows(gross);
    await expect(counter.getByText('Put the bowl on, then tare').first()).toBeVisible();
    await page.locator('main').focus();
    await page.keyboard.press('PageDown');
    for (const part of parts) {
      await expect(page.locator('.counter .figure')).toHaveText(`${part.grams.toFixed(1)} g`);
      gross += part.grams;
      scale.shows(gross);
      await expect(counter.getByText('steady').first()).toBeVisible();
      await expect(page.locator('.counter .figure')).toHaveText('0.0 g');
      await page.keyboard.press('PageDown');
    }
    await expect(counter.getByText('All parts are in')).toBeVisible();
  }
}

test('a new client from the reading to bowls weighed by the scale, and their label on paper', async ({
  page,
  salon,
}) => {
  test.setTimeout(900_000);
  await open(page, salon);
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByLabel('Label', { exact: true }).fill('W. V.');
  await page.getByLabel('Day of the last skin test').fill(daysAgo(5));
  await page.locator('label', { hasText: 'Read, and clear' }).click();
  await page.locator('label', { hasText: 'All asked' }).click();
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await expect(page.getByRole('heading', { name: 'reading' })).toBeVisible();
  await page.getByRole('link', { name: /target/ }).click();
  await page.getByRole('button', { name: 'level 5, gold' }).click();
  await agree(page);
  await weigh(page, salon);
  const bowls = (await running(page, salon)).bowls.length;
  // The label of a bowl is all that goes on paper.
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('region', { name: 'Label of the bowl' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Print the label' })).toBeHidden();
  expect((await page.pdf()).subarray(0, 5).toString()).toBe('%PDF-');
  await page.emulateMedia({ media: 'screen' });
  expect(bowls).toBeGreaterThan(0);
});

for (const [language, name] of [
  ['de', /^Schale A wiegen|^Schale/],
  ['fr', /^Peser le bol/],
  ['es', /^Pesar el bol/],
] as const) {
  test(`bowl and clock in ${language} are accessible and fit a phone`, async ({ page, salon }) => {
    const id = 'demo-toner_on_lightened';
    await page.addInitScript((to) => localStorage.setItem('strandline.language', to), language);
    scale.shows(120);
    await open(page, salon, `#/visits/${id}/clock`);
    await page.locator('main .begin button').last().click({ timeout: 180_000 });
    await expect(page.getByRole('timer')).toBeVisible();
    await page.setViewportSize({ width: 320, height: 844 });
    await expectNoSideScroll(page);
    await expectAccessible(page);
    await page.goto(`${salon.url}#/visits/${id}/weigh`);
    await expect(page.getByRole('region', { name })).toBeVisible();
    await expectNoSideScroll(page);
    await expectAccessible(page);
  });
}
