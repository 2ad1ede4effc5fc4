import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// One zone, half of it white: no one bowl reaches the wish.
const hash = '#/visits/demo-half_white_three_to_seven/plan';

async function planned(page: Page) {
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  await expect(bowls.getByRole('table').first()).toBeVisible({ timeout: 300_000 });
  return bowls;
}

test('a way over several steps is shown whole, with what to mix after the check', async ({ page, salon }) => {
  await open(page, salon, hash);
  const routes = page.getByRole('region', { name: 'More than one step' });
  await expect(routes).toContainText('Recommended', { timeout: 300_000 });
  await expect(routes).toContainText('No one bowl does this');
  await expect(routes).toContainText('try the whole way on a strand first', { ignoreCase: true });
  await routes.locator('summary').first().click();
  await expect(routes.getByText(/stop on pain, heat or stretching hair/)).toBeVisible();
  const table = routes.getByRole('table').first();
  await expect(table.getByRole('columnheader')).toHaveText(['It shows level', 'Likely', 'Then mix']);
  expect(await table.getByRole('row').count()).toBeGreaterThan(2);
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSideScroll(page);
});

test('a way over several steps is looked at, taken as the plan, undone, taken again, printed and kept', async ({
  page,
  salon,
}) => {
  await open(page, salon, hash);
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  const none = bowls.getByText('No one bowl does this: see the way over several steps.');
  await expect(none).toBeVisible({ timeout: 300_000 });
  const routes = page.getByRole('region', { name: 'More than one step' });

  await routes
    .getByRole('button', { name: /^See it/ })
    .first()
    .click();
  await expect(page.getByText(/Shown: another way, not the plan: Lighten, then tone/)).toBeVisible();
  await expect(bowls.getByRole('heading', { name: 'Step 2 of 2' })).toBeVisible();
  await expect(bowls.getByText(/Mix the next bowl only after that/)).toBeVisible();
  await expect(bowls.getByRole('button', { name: 'Change grams' })).toHaveCount(0);
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Back to the plan' }).click();

  const take = routes.getByRole('button', { name: /^Use this route/ }).first();
  await take.focus();
  await page.keyboard.press('Enter');
  const taken = page.getByRole('region', { name: 'Route: Lighten, then tone' });
  await expect(taken).toBeVisible();
  // The offer to undo does not stay for long: it is used at once, and the way is taken again.
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(taken).toBeHidden();
  await expect(none).toBeVisible();
  await take.focus();
  await page.keyboard.press('Enter');
  await expect(taken).toBeVisible();
  await expect(bowls.getByText('Your own bowls')).toBeVisible();
  await expect(bowls.getByRole('heading', { name: 'Step 1 of 2' })).toBeVisible();
  await expect(taken.getByRole('table').first()).toBeVisible();
  await expect(page.getByRole('banner')).toContainText('· saved');
  const undo = page.getByRole('button', { name: 'Undo' });
  await expect(undo).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await expect(undo, 'notes are not printed').toBeHidden();
  const paper = page.getByRole('article');
  await expect(paper.getByText('Step 2 of 2')).toBeVisible();
  await expect(paper.getByRole('columnheader', { name: 'Then mix' }).first()).toBeVisible();
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await page.emulateMedia({ media: 'screen' });
  // The tablet slept: the stored visit still knows its way, with what to mix for what the check shows.
  await page.reload();
  await expect(taken.getByRole('table').first()).toBeVisible({ timeout: 300_000 });
});

test('bowls are looked over, and the change that is advised can be taken and undone', async ({
  page,
  salon,
}) => {
  await open(page, salon, '#/visits/demo-my_own_bowls/plan');
  const bowls = await planned(page);
  await bowls.getByText('Check these bowls').click();
  await expect(bowls.getByText('Smallest change that fixes it:').first()).toBeVisible({
    timeout: 120_000,
  });
  await expect(bowls.getByText(/levels nearer/).first()).toBeVisible();
  await expectAccessible(page);
  const before = await bowls.getByRole('table').first().innerText();
  await bowls.getByRole('button', { name: 'Make this change' }).first().click();
  await expect.poll(() => bowls.getByRole('table').first().innerText()).not.toBe(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => bowls.getByRole('table').first().innerText()).toBe(before);
});

test('an empty tube is replaced by keyboard alone', async ({ page, salon }) => {
  await open(page, salon, '#/visits/demo-my_own_bowls/plan');
  const bowls = await planned(page);
  const summary = bowls.locator('summary', { hasText: 'Tube empty, or another range' });
  await summary.focus();
  await page.keyboard.press('Enter');
  const without = bowls.getByLabel('Do without');
  await without.focus();
  await without.selectOption({ index: 1 });
  await expect(bowls.getByText(/Instead of bowl/).first()).toBeVisible({ timeout: 120_000 });
  await expect(bowls.getByText(/ΔE00/)).toHaveCount(0);
  await bowls.locator('summary', { hasText: 'Differences in figures' }).first().focus();
  await page.keyboard.press('Enter');
  await expect(bowls.getByText(/ΔE00/).first()).toBeVisible();
  await expectAccessible(page);
  const take = bowls.getByRole('button', { name: 'Use this' }).first();
  const before = await bowls.getByRole('table').first().innerText();
  await take.focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => bowls.getByRole('table').first().innerText()).not.toBe(before);
});
