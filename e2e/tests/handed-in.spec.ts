import { asked } from '../support/asked';
import { signed } from '../support/chair';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// From the plan of a head to the returning client: agreed, its result told, handed in, looked after, opened again.
test('a visit is agreed, handed in and comes back', async ({ page, salon }) => {
  test.setTimeout(240_000);
  await open(page, salon);
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByLabel('Label', { exact: true }).fill('Q. R.');
  await asked(page);
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await expect(page.getByRole('heading', { name: 'reading' })).toBeVisible();
  await page.getByRole('link', { name: /target/ }).click();
  await page.getByRole('button', { name: 'level 5, gold' }).click();

  await page.getByRole('link', { name: /agree/ }).click();
  const agree = page.getByRole('button', { name: 'I agree' });
  await expect(agree).toBeDisabled({ timeout: 120_000 });
  await expect(page.getByRole('heading', { name: 'What it should become' })).toBeVisible();
  // Health is not for the glass that others see.
  await expect(page.getByText(/pregnan|medicine|asthma/i)).toHaveCount(0);
  await signed(page);
  await page.getByRole('spinbutton', { name: 'Price from' }).focus();
  for (let i = 0; i < 9; i++) await page.keyboard.press('PageUp');
  await expectAccessible(page);
  await agree.click();
  await expect(page.getByText(/Agreed \w+ \d+/)).toBeVisible();

  await page.getByRole('link', { name: /result/ }).click();
  const end = page.getByRole('button', { name: 'As predicted: hand in' });
  await expect(end).toBeVisible({ timeout: 60_000 });
  await page.getByLabel('What they said').fill('As I wished');
  const level = page.getByRole('spinbutton', { name: /Level reached/ }).first();
  await level.focus();
  await page.keyboard.press('ArrowUp');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Hand in', exact: true }).click();

  // Handed in: the sheet of dates, its code, and the record.
  await expect(page.getByRole('heading', { name: 'Your colour today' })).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('img', { name: 'Code that holds this sheet as text' })).toBeVisible();
  await expect(page.getByText(/Come again between/)).toBeVisible();
  await expectAccessible(page);
  await expectNoSideScroll(page);
  await page.getByRole('button', { name: 'Given to the client' }).click();
  await expect(page.getByText(/✓ Given/)).toBeVisible();
  await expect(page.getByRole('navigation', { name: 'Steps of the visit' }).getByRole('link')).toHaveCount(3);
  await page.getByRole('link', { name: /result/ }).click();
  await expect(page.getByRole('heading', { name: 'Record of the visit' })).toBeVisible();
  await expect(page.getByText('“As I wished”')).toBeVisible();
  await expectAccessible(page);

  // The draft is gone; the client is there, with the visit as strands.
  await page.goto(`${salon.url}#/clients`);
  await page.getByLabel('Find by any part of a name').fill('r.');
  await page.getByRole('link', { name: /Q\. R\./ }).click();
  await expect(page.getByText('“As I wished”')).toBeVisible({ timeout: 60_000 });
  await expect(page.locator('[data-drawn]').first()).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByLabel('Label', { exact: true })).toHaveValue('Q. R.');
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await expect(page.getByRole('heading', { name: 'reading' })).toBeVisible({ timeout: 60_000 });
  // It starts from what was seen, not from the plan: the colour is told as tinted hair.
  await expect(page.getByText('gold').first()).toBeVisible();
});
