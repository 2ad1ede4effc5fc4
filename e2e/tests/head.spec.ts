import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectHair, expectNoSideScroll, open, test } from '../support/test';

const reading = '#/visits/demo-salt_and_pepper_two_tones/assess';
const list = (page: Page) => page.getByRole('group', { name: 'Area', exact: true });
const drawing = (page: Page) => page.getByLabel(/^Head from/);
const pick = (page: Page, name: string) =>
  list(page)
    .locator('label', { has: page.getByText(name, { exact: true }) })
    .click();
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const names = (page: Page) => list(page).locator('label').allInnerTexts();
/** A place on the drawing that belongs to the area: where a finger would go. */
async function spotOn(page: Page, area: string): Promise<{ x: number; y: number }> {
  await drawing(page).scrollIntoViewIfNeeded();
  const piece = drawing(page).getByLabel(area, { exact: true });
  const spot = await piece.evaluate((g: SVGGElement) => {
    const { left, top, right, bottom } = g.ownerSVGElement!.getBoundingClientRect();
    const found: { x: number; y: number }[] = [];
    for (let y = top; y < bottom; y += 3)
      for (let x = left; x < right; x += 3)
        if (g.contains(document.elementFromPoint(x, y))) found.push({ x, y });
    return found[found.length >> 1];
  });
  if (!spot) throw new Error(`${area} does not show`);
  return spot;
}
async function clickOn(page: Page, area: string): Promise<void> {
  const { x, y } = await spotOn(page, area);
  await page.mouse.click(x, y);
}
const start = ['front hairline', 'temples', 'top', 'crown', 'nape'];

test('a name that was typed counts before the press on a value, and both stay', async ({ page, salon }) => {
  await open(page, salon, reading);
  await expectHair(page, 5);
  await pick(page, 'crown');
  await button(page, 'This area')
    .or(page.getByText('This area', { exact: true }))
    .first()
    .click();
  await page.getByRole('textbox', { name: 'Name' }).fill('whorl');
  const white = page.getByRole('spinbutton', { name: 'White' });
  const before = Number(await white.getAttribute('aria-valuenow'));
  await button(page, 'More: White').hover();
  await page.mouse.down();
  await page.waitForTimeout(1000);
  await page.mouse.up();
  await expect.poll(() => names(page)).toEqual(['front hairline', 'temples', 'top', 'whorl', 'nape']);
  await expect(list(page).getByRole('radio', { checked: true })).toHaveAccessibleName(/whorl/);
  const after = Number(await white.getAttribute('aria-valuenow'));
  expect(after).toBeGreaterThan(before + 5);
  await pick(page, 'front hairline');
  await pick(page, 'whorl');
  await expect(white).toHaveAttribute('aria-valuenow', String(after));
});

test('an area is chosen on the drawing and in the list, and the head turns to it', async ({
  page,
  salon,
}) => {
  await open(page, salon, reading);
  await expectHair(page, 5);
  expect(await names(page)).toEqual(start);
  await clickOn(page, 'top');
  await expect(list(page).getByRole('radio', { name: 'top' })).toBeChecked();
  await expect(page.getByRole('button', { name: /^top/, pressed: true })).toBeVisible();
  await pick(page, 'nape');
  await expect(page.getByLabel('Head from the left')).toBeVisible();
  await expect(drawing(page).getByRole('radio', { name: 'nape' })).toHaveAttribute('aria-checked', 'true');
});

test('an area is parted with its reading, joined again, and both can be undone', async ({ page, salon }) => {
  await open(page, salon, reading);
  await expectHair(page, 5);
  await pick(page, 'crown');
  await button(page, 'Part').click();
  await button(page, 'upper | lower').click();
  expect(await names(page)).toEqual([
    'front hairline',
    'temples',
    'top',
    'crown upper',
    'crown lower',
    'nape',
  ]);
  await expect(page.getByRole('spinbutton', { name: 'White' })).toHaveAttribute('aria-valuenow', '60');
  await button(page, 'Undo').click(); // it stays for some seconds only
  await expect(list(page).getByRole('radio', { name: 'crown', exact: true })).toBeChecked();
  expect(await names(page)).toEqual(start);

  await button(page, 'Part').click();
  await button(page, 'left | right').click();
  await expectHair(page, 6);
  await button(page, 'Join').click();
  await pick(page, 'crown right');
  // Both have the same reading: nothing to ask.
  await button(page, 'Join 2 areas').click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(await names(page)).toEqual(start);
});

test('areas that are read differently ask whose reading holds', async ({ page, salon }) => {
  await open(page, salon, reading);
  await expectHair(page, 5);
  await pick(page, 'crown');
  await button(page, 'Join').click();
  await page.getByRole('radio', { name: 'above' }).check();
  await clickOn(page, 'top');
  await expectAccessible(page);
  await button(page, 'Join 2 areas').click();
  const asks = page.getByRole('dialog', { name: 'Which reading holds for all of it?' });
  await expect(asks.getByRole('button', { name: /crown/ })).toContainText('60 % white');
  await expectAccessible(page);
  await asks.getByRole('button', { name: /^top/ }).click();
  await expect(list(page).getByRole('radio', { name: 'top + crown' })).toBeChecked();
  await expect(page.getByRole('spinbutton', { name: 'White' })).toHaveAttribute('aria-valuenow', '45');
  await expectHair(page, 4);
  await button(page, 'Take apart').click();
  expect(await names(page)).toEqual(start);
  await expect(page.getByRole('banner')).toContainText('· saved');
  await page.reload();
  await expectHair(page, 5);
  await pick(page, 'crown');
  await expect(page.getByRole('spinbutton', { name: 'White' })).toHaveAttribute('aria-valuenow', '45');
});

test('the head by keyboard alone', async ({ page, salon }) => {
  await open(page, salon, reading);
  await expectHair(page, 5);
  const focused = () =>
    page.evaluate(() => {
      const on = document.activeElement;
      return on?.getAttribute('aria-label') ?? (on as HTMLInputElement | null)?.labels?.[0]?.innerText ?? '';
    });
  await drawing(page).getByRole('radio', { name: 'front hairline' }).focus();
  await page.keyboard.press('ArrowRight');
  expect(await focused()).toBe('temples');
  await expect(list(page).getByRole('radio', { name: 'temples' })).toBeChecked();
  await button(page, 'Part').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  await expect(button(page, 'Part')).toBeVisible();
  expect(await focused()).toBe('temples');
  await button(page, 'Part').focus();
  await page.keyboard.press('Enter');
  await button(page, 'left | right').focus();
  await page.keyboard.press('Enter');
  // The button is gone; the focus is on what came of it.
  await expect(list(page).getByRole('radio', { name: 'left temple' })).toBeFocused();
  await button(page, 'Join').focus();
  await page.keyboard.press('Enter');
  await drawing(page).getByRole('checkbox', { name: 'left temple' }).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
  await expect(list(page).getByRole('checkbox', { checked: true })).toHaveCount(2);
});

test('the head by touch on a phone', async ({ browser, salon }) => {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    locale: 'en-GB',
  });
  const page = await context.newPage();
  await open(page, salon, reading);
  await expectHair(page, 5);
  const { x, y } = await spotOn(page, 'top');
  await page.touchscreen.tap(x, y);
  await expect(list(page).getByRole('radio', { name: 'top' })).toBeChecked();
  await button(page, 'Part').tap();
  await button(page, 'front | back').tap();
  await expect(list(page).getByRole('radio', { name: 'top front' })).toBeChecked();
  await button(page, 'Join').tap();
  for (const row of await list(page).locator('label').all())
    expect((await row.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSideScroll(page);
  await expectAccessible(page);
  await context.close();
});
