import { daysAgo } from '../support/asked';
import { agreed, running, weighed } from '../support/chair';
import { SimulatedScale } from '../support/scale';
import { expect, expectAccessible, expectNoSideScroll, open, test as base } from '../support/test';

const scale = new SimulatedScale();
const test = base.extend({ more: [scale.more, { scope: 'test' }] });
// Hair is drawn in software beside it: a page may stand for a while.
test.use({ actionTimeout: 90_000 });
test.afterAll(() => scale.remove());

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
  await agreed(page);
  await weighed(page, salon, scale);
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
