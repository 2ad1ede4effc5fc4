import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// What a salon brings along, and what somebody who asks is told.
test('a paper card and a list come in', async ({ page, salon }) => {
  await open(page, salon, '#/clients');
  await page.getByText('A paper card, or a list', { exact: true }).click();
  await page.getByLabel('Name on the card').fill('Ana Berg');
  await page.getByLabel('Date of the last entry').fill('2025-11-02');
  await page.getByLabel('What stands on it').fill('6.3, 20 g, 35 min');
  await page.getByRole('button', { name: 'Keep the card' }).click();
  await expect(page.getByText('✓ Kept: 1')).toBeVisible();
  const csv = 'Nom;Note;Plz\nBéa;roots only;75\n;x;\nCleo;;\n';
  const file = { name: 'a.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) };
  await page.locator('input[type=file]').setInputFiles(file);
  await expect(page.getByText('2 clients are in it. Keep them?')).toBeVisible();
  await expect(page.getByText('Without a name, left out: 1')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Keep the list' }).click();
  await expect(page.getByText('✓ Kept: 2')).toBeVisible();
  await page.locator('input[type=file]').setInputFiles(file);
  await page.getByRole('button', { name: 'Keep the list' }).click();
  await expect(page.getByText('✓ Kept: 0 · Here already, left as they are: 2')).toBeVisible();
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSideScroll(page);
  await page.getByLabel('Find by any part of a name').fill('bea');
  await page.getByRole('link', { name: /Béa/ }).click();
  await expect(page.getByText(/roots only\s+Plz: 75/)).toBeVisible();
  await expectAccessible(page);
  await expectNoSideScroll(page);
});

test('somebody who asks is told minutes and the day of the test', async ({ page, salon }) => {
  await open(page, salon, '#/diary');
  await page.getByRole('button', { name: 'Book' }).click();
  await page.getByText('Minutes, price and test, from three answers', { exact: true }).click();
  await page.locator('label', { hasText: 'short' }).click();
  await page.getByRole('button', { name: 'Work it out' }).click();
  await expect(page.getByText(/ min.*no price by the house’s rules yet · skin test by/)).toBeVisible({
    timeout: 60_000,
  });
  await expect(page.getByLabel('Wish')).toHaveValue('short, colour, roots and white as the rest');
  await expectAccessible(page);
});
