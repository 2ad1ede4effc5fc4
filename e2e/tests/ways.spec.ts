import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// One zone, so the search is quick.
const hash = '#/visits/demo-half_white_three_to_seven/plan';
const title = { en: 'Other ways', fr: 'Autres chemins' };

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
  await expect(card).toContainText(/\(\d+\.\d\d levels\)/);
  await expect(card).toContainText(/Bowl A, \d/);
  const before = await firstGrams(page);

  const look = card.getByRole('button', { name: 'See it' });
  await look.click();
  await expect(look).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText(/You see another way, not the plan/)).toBeVisible();
  expect(await firstGrams(page), 'looking changes nothing').toBe(before);
  await page.getByRole('button', { name: 'Back to the plan' }).click();
  await expect(page.getByText(/You see another way/)).toBeHidden();

  await card.getByRole('button', { name: 'Take this one' }).click();
  await expect(page.getByText('Your own bowls', { exact: true })).toBeVisible();
  await expect.poll(() => firstGrams(page)).not.toBe(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => firstGrams(page)).toBe(before);
  await expect(page.getByText('Your own bowls', { exact: true })).toBeHidden();
  await expect(ways).toBeVisible();
});

test('all of it by keyboard', async ({ page, salon }) => {
  await open(page, salon, hash);
  const ways = await openWays(page);
  const look = ways.getByRole('button', { name: 'See it' }).first();
  await look.focus();
  await page.keyboard.press('Enter');
  await expect(look).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Tab');
  await expect(ways.getByRole('button', { name: 'Take this one' }).first()).toBeFocused();
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
    await expect(page.getByText(/Un autre chemin est montré/)).toBeVisible();
    await expectAccessible(page);
  });
});
