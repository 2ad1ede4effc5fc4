import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

/** The civil date so many days from now, as this browser's zone has it. */
function dayIn(days: number): string {
  const paris = new Intl.DateTimeFormat('en-CA', { timeZone: 'Europe/Paris' });
  return paris.format(new Date(Date.now() + days * 86_400_000));
}

// Colour with its test, an hour that is taken, and a visit that begins from its line.
test('a day is planned and a visit begins from it', async ({ page, salon, watch }) => {
  // Each refusal that is tried here.
  watch.allow.push(/status of 409/);
  await open(page, salon);
  await expect(page.getByRole('heading', { name: 'Today' })).toBeVisible();
  await expect(page.getByText('Nothing is planned on this day.')).toBeVisible();
  const book = page.getByRole('button', { name: 'Book' });
  const save = page.getByRole('button', { name: 'Save' });

  await book.click();
  await page.getByLabel('Client', { exact: true }).fill('Ana B.');
  await page.getByLabel('Day', { exact: true }).fill(dayIn(1));
  await page.getByLabel('Hour', { exact: true }).fill('10:00');
  await page.locator('label', { hasText: 'Book the test as well' }).click();
  await save.click();
  await expect(page.getByText(/Before colour a test has to be made and read/)).toBeVisible();
  await expectAccessible(page);
  await page.getByLabel('Day', { exact: true }).fill(dayIn(6));
  await page.locator('label', { hasText: 'Book the test as well' }).click();
  await expect(page.getByLabel('Day of the test')).toHaveValue(dayIn(4));
  await save.click();
  await expect(save).toBeHidden();

  await book.click();
  await page.locator('label', { hasText: 'something else' }).click();
  await page.getByLabel('Hour', { exact: true }).fill('08:00');
  await page.getByLabel('Client', { exact: true }).fill('Bo');
  await save.click();
  await expect(page.getByText('Bo', { exact: true })).toBeVisible();
  await book.click();
  await page.locator('label', { hasText: 'something else' }).click();
  await page.getByLabel('Hour', { exact: true }).fill('08:30');
  await save.click();
  await expect(page.getByText('These hands are taken at that hour.')).toBeVisible();
  await page.getByRole('button', { name: 'Share the hour knowingly' }).click();
  await expect(page.getByText('no name')).toBeVisible();
  await expectAccessible(page);

  await page.getByRole('button', { name: 'Begin' }).first().click();
  await expect(page.getByRole('heading', { name: 'reading' })).toBeVisible();
  await page.goto(`${salon.url}#/diary`);
  await expect(page.getByRole('link', { name: 'Open the visit' })).toHaveCount(1);
  await page.getByLabel('Day', { exact: true }).fill(dayIn(6));
  await expect(page.getByText(/test planned/)).toBeVisible();
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSideScroll(page);
  await expectAccessible(page);
});
