import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// Two zones and a target near what is there, so the search is quick.
const hash = '#/visits/demo-toner_on_lightened/plan';
const title = { en: 'Other ways', fr: 'Autres possibilités' };

async function openWays(page: Page, language: 'en' | 'fr' = 'en') {
  const ways = page.getByRole('region', { name: title[language] });
  await expect(ways).toBeVisible({ timeout: 300_000 });
  return ways;
}
const firstGrams = (page: Page) => page.getByRole('complementary').getByRole('table').first().innerText();

test('another way can be looked at, taken and undone', async ({ page, salon }) => {
  await open(page, salon, hash);
  const ways = await openWays(page);
  const card = ways.getByRole('region').first();
  await expect(card, 'figures on demand').not.toContainText(/\d\.\d\d levels/);
  await card.getByText('Its bowls').click();
  await expect(card).toContainText(/\(\d+\.\d\d levels\)/);
  await expect(card).toContainText(/Bowl A, \d/);
  const before = await firstGrams(page);

  const look = card.getByRole('button', { name: 'See it' });
  await look.click();
  await expect(look).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText(/Shown: another way, not the plan/)).toBeVisible();
  await page.getByRole('button', { name: 'Back to the plan' }).click();
  await expect(page.getByText(/Shown: another way/)).toBeHidden();
  expect(await firstGrams(page)).toBe(before);

  await card.getByRole('button', { name: 'Use these bowls' }).click();
  await expect(page.getByText('Your own bowls', { exact: true })).toBeVisible();
  await expect.poll(() => firstGrams(page)).not.toBe(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => firstGrams(page)).toBe(before);
  await expect(page.getByText('Your own bowls', { exact: true })).toBeHidden();
  await expect(ways).toBeVisible();
});

test('the buttons of a gram stay under the finger', async ({ page, salon }) => {
  await open(page, salon, hash);
  await openWays(page);
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  await bowls.getByRole('button', { name: 'Change grams' }).first().click();
  const more = bowls.getByRole('button', { name: /^More/ }).first();
  await more.hover(); // brings it out from under the bar, where a finger could not press it
  const before = await more.boundingBox();
  await more.click();
  await expect(bowls.getByText('Your own bowls')).toBeVisible();
  await expect(bowls.locator('[aria-busy="true"]')).toHaveCount(0);
  expect(await more.boundingBox()).toEqual(before);

  // Held, it is answered on the way; let go, all of the card says what was weighed.
  let answers = 0;
  page.on('response', (response) => (answers += Number(response.url().endsWith('/what-if'))));
  await more.hover();
  await page.mouse.down();
  await page.waitForTimeout(1500);
  expect(answers).toBeGreaterThan(2);
  await page.mouse.up();
  const card = bowls.getByRole('region').first();
  const parts = await card.getByRole('spinbutton').evaluateAll((all) => all.map((one) => one.ariaValueNow));
  const total = `${parts.reduce((sum, one) => sum + Number(one), 0).toFixed(1)} g`;
  await expect(card.locator('header')).toContainText(total);
  await expect(page.getByRole('banner')).toContainText('· saved');
  await page.reload();
  await expect(card.locator('header')).toContainText(total, { timeout: 60_000 });
});

test('while another way is looked at, every part of the screen shows it and the visit stays as it is', async ({
  page,
  salon,
}) => {
  await open(page, salon, hash);
  const ways = await openWays(page);
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  const clock = page.getByRole('region', { name: 'Colourist and bowls over time' });
  const figures = bowls.locator('dl').first();
  const parts = {
    grams: () => firstGrams(page),
    cost: () => figures.innerText(),
    words: () => page.locator('section[aria-labelledby="plan-title"] .aside').first().innerText(),
  };
  const read = async () =>
    Object.fromEntries(await Promise.all(Object.entries(parts).map(async ([k, get]) => [k, await get()])));
  const before = await read();

  const saves: string[] = [];
  page.on('request', (request) => request.method() === 'PUT' && saves.push(request.url()));
  const [answer] = await Promise.all([
    page.waitForResponse('**/api/v1/what-if'),
    ways.getByRole('button', { name: 'See it' }).first().click(),
  ]);
  const way = await answer.json();
  await expect(page.getByText(/Shown: another way, not the plan/)).toBeVisible();
  const seen = await read();
  expect(seen.grams).not.toBe(before.grams);
  for (const part of way.bowls[0].parts) expect(seen.grams).toContain(part.name);
  // The drawing and its list come from the way's own clock, the reasons from its own bowls.
  const ends = way.timeline.tasks.map((task: { end_min: number }) => task.end_min);
  const last = Math.round(Math.max(...ends));
  await page.getByText('As a list').click();
  const stamp = `${Math.floor(last / 60)}:${String(last % 60).padStart(2, '0')}`;
  await expect(
    clock
      .locator('..')
      .getByText(new RegExp(`–${stamp}$`))
      .first(),
  ).toBeVisible();
  const minutes = Math.round(way.timeline.finish_min);
  expect(seen.cost).toContain(minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h`);
  await expect(bowls.getByRole('button', { name: 'Change grams' })).toHaveCount(0);
  await expect(page.getByText('Your own bowls', { exact: true })).toBeHidden();

  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const paper = page.getByRole('article');
  await expect(paper.getByText(/Shown: another way, not the plan/)).toBeVisible();
  for (const part of way.bowls[0].parts) await expect(paper.getByText(part.name).first()).toBeVisible();
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });

  await page.getByRole('button', { name: 'Back to the plan' }).click();
  await expect.poll(read).toEqual(before);
  expect(saves).toEqual([]);
});

test('a way that cannot be worked out says so and the plan stays', async ({ page, salon, watch }) => {
  watch.allow.push(/ERR_FAILED|Failed to load resource/);
  await page.route('**/api/v1/what-if', (route) => route.abort());
  await open(page, salon, hash);
  const ways = await openWays(page);
  const before = await firstGrams(page);
  await ways.getByRole('button', { name: 'See it' }).first().click();
  await expect(page.getByText(/This could not be worked out just now/)).toBeVisible();
  expect(await firstGrams(page)).toBe(before);
});

test('all of it by keyboard', async ({ page, salon }) => {
  await open(page, salon, hash);
  const ways = await openWays(page);
  const look = ways.getByRole('button', { name: 'See it' }).first();
  await look.focus();
  await page.keyboard.press('Enter');
  await expect(look).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Tab');
  await expect(ways.getByRole('button', { name: 'Use these bowls' }).first()).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Your own bowls', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Your own bowls', { exact: true })).toBeHidden();
  await expect(page.getByRole('banner')).toContainText('· saved');
});

for (const scheme of ['light', 'dark'] as const) {
  test(`looking at another way is accessible in ${scheme}`, async ({ page, salon }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await open(page, salon, hash);
    const ways = await openWays(page);
    await ways.getByRole('button', { name: 'See it' }).first().click();
    await expectAccessible(page);
    await page.setViewportSize({ width: 320, height: 844 });
    await expectNoSideScroll(page);
  });
}

test.describe('in French', () => {
  test.use({ locale: 'fr-FR' });
  test('the ways speak French', async ({ page, salon }) => {
    await open(page, salon, hash);
    const ways = await openWays(page, 'fr');
    await expect(ways).toContainText(/Plus doux|Plus simple|Moins cher|Moins de bols/);
    await ways.getByRole('button', { name: 'Voir' }).first().click();
    await expect(page.getByText(/Une autre possibilité est montrée/)).toBeVisible();
    await expectAccessible(page);
  });
});
