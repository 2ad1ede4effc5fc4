import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectHair, expectNoSideScroll, open, test } from '../support/test';

const visit = '#/visits/demo-salt_and_pepper_two_tones';
const list = (page: Page) => page.getByRole('group', { name: 'Area', exact: true });
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const radio = (page: Page, name: string | RegExp) => list(page).getByRole('radio', { name });
const strip = (page: Page, nth: number) =>
  page.getByRole('img', { name: /^Hair from scalp to tip/ }).nth(nth);

/** The same page in dark at once: axe must not see a colour on its way. */
const darken = (page: Page) => page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });

test('packets are taken up, made narrower and put back by keyboard alone', async ({ page, salon }) => {
  await open(page, salon, `${visit}/assess`);
  await expectHair(page, 5);
  await radio(page, 'top').focus();
  await page.keyboard.press('Space');
  await button(page, 'Weave out packets').focus();
  await page.keyboard.press('Enter');
  // The button is gone; the focus is on what came of it.
  await expect(radio(page, /^top packets/)).toBeFocused();
  await expect(list(page).locator('label').nth(3)).toContainText('30 %, 4 mm');
  await expectHair(page, 6);
  await expect(strip(page, 2)).toHaveAccessibleName(/30\s% top packets in packets 4 mm wide every 13.3 mm/);
  await page.getByRole('spinbutton', { name: 'Width of a packet' }).focus();
  await page.keyboard.press('ArrowUp');
  await expect(button(page, 'Undo')).toHaveCount(0);
  await page.getByRole('spinbutton', { name: 'Share in packets' }).focus();
  await page.keyboard.press('End');
  await expect(list(page).locator('label').nth(3)).toContainText('90 %, 5 mm');
  await expect(page.getByText(/They begin off the scalp/)).toBeVisible();
  await page.getByRole('spinbutton', { name: 'Off the scalp by' }).focus();
  await page.keyboard.press('Home');
  await expect(page.getByText(/counts as touching it/)).toBeVisible();
  await expectAccessible(page);
  await darken(page);
  await expectAccessible(page);
  await button(page, 'Put them back').focus();
  await page.keyboard.press('Enter');
  await expect(radio(page, 'top')).toBeFocused();
  await expect(list(page).locator('label')).toHaveCount(5);
  // Only what was done last can be undone: an older way back would take newer work with it.
  await expect(button(page, 'Undo')).toHaveCount(1);
  await button(page, 'Undo').click();
  await expect(radio(page, /^top packets/)).toBeChecked();
});

test('packets by touch, wished lighter, get a bowl of their own', async ({ browser, page: desk, salon }) => {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    locale: 'en-GB',
  });
  const page = await context.newPage();
  await open(page, salon, `${visit}/assess`);
  await expectHair(page, 5);
  await list(page).locator('label', { hasText: 'top' }).tap();
  await button(page, 'Weave out packets').tap();
  await expect(radio(page, /^top packets/)).toBeChecked();
  await expectNoSideScroll(page);
  await page.setViewportSize({ width: 390, height: 2600 }); // all of it at once, nothing under the bars
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expect(page.getByRole('banner')).toContainText('· saved');

  await page.goto(`${salon.url}${visit}/aim`);
  const choose = (group: string, value: string) =>
    page
      .getByRole('group', { name: group })
      .locator('label', { has: page.getByText(value, { exact: true }) })
      .tap();
  await choose('Where', 'top packets');
  await choose('Span from scalp to tip', 'regrowth');
  await page
    .getByRole('gridcell')
    .getByRole('button', { name: /^level 7, beige/ })
    .tap();
  await expect(page.getByRole('banner')).toContainText('· saved');
  await context.close();

  await desk.goto(`${salon.url}${visit}/plan`);
  const bowls = desk.getByRole('complementary', { name: 'Bowls' });
  await expect(bowls.getByRole('table').nth(1)).toBeVisible({ timeout: 300_000 });
  const packets = bowls.getByRole('heading', { name: /top packets/ });
  await expect(packets.first()).toBeVisible();
  const letter = (await packets.first().innerText()).trim().charAt(0);
  await expect(strip(desk, 2)).toHaveAccessibleName(new RegExp(`top packets.*bowl ${letter}`));
  await expect(strip(desk, 3)).toHaveAccessibleName(new RegExp(`bowl ${letter}`));
  await expectAccessible(desk);
  await darken(desk);
  await expectAccessible(desk);
  await desk.getByText('If the reading is off').click();
  const table = desk.getByRole('region', { name: 'If the reading is off' }).getByRole('table');
  await expect(table.getByRole('columnheader')).toHaveText([
    'Area',
    'as read',
    'hair ½ darker',
    'hair ½ lighter',
    '10 points more white',
    '10 points less white',
    'one step more porous',
  ]);
  await expect(table.getByRole('rowheader', { name: 'top packets' })).toBeVisible();
  const cells = await table.getByRole('row').nth(2).getByRole('cell').allInnerTexts();
  expect(new Set(cells).size, cells.join(' | ')).toBeGreaterThan(1);
});

test('old highlights get a bowl of their own', async ({ page, salon }) => {
  await open(page, salon, `${visit}/assess`);
  await expectHair(page, 5);
  await radio(page, 'top').check();
  await page.getByText('Strands of another colour').click();
  await button(page, 'Add strands').click();
  await button(page, 'A bowl of their own').click();
  await expect(radio(page, /^top packets/)).toBeChecked();
  await expect(list(page).locator('label').nth(3)).toContainText('30 %, 4 mm');
  await expectHair(page, 6);
  await button(page, 'Undo').click();
  await expect(list(page).locator('label')).toHaveCount(5);
});

test('grams of an empty tube that are weighed already count', async ({ page, salon }) => {
  await open(page, salon, '#/visits/demo-my_own_bowls/plan');
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  await expect(bowls.getByRole('table').first()).toBeVisible({ timeout: 300_000 });
  await bowls.locator('summary', { hasText: 'Tube empty, or another range' }).click();
  await bowls.getByLabel('Do without').selectOption({ index: 1 });
  await expect(bowls.getByText(/Instead of bowl/).first()).toBeVisible({ timeout: 120_000 });
  const grams = bowls.getByRole('spinbutton', { name: 'Already in the bowl' });
  await expect(grams).toHaveAttribute('aria-valuenow', '0');
  const asked = page.waitForRequest(
    (request) => request.url().includes('substitute') && /"weighed_g":\s*5/.test(request.postData() ?? ''),
  );
  await grams.focus();
  await page.keyboard.press('PageUp');
  await asked;
  await expect(bowls.getByText(/Finish what is weighed|what is weighed \(5 g/).first()).toBeVisible({
    timeout: 120_000,
  });
  await expectAccessible(page);
});
