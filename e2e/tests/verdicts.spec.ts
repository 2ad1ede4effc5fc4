import { asked } from '../support/asked';
import { expect, open, test } from '../support/test';

// Nothing is mixed before it was asked; the answer opens the plan, and a reaction closes it again.
test('a new head is stopped until it was asked, and by a reaction for good', async ({ page, salon }) => {
  await open(page, salon);
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByLabel('Label', { exact: true }).fill('V. D.');
  await asked(page);
  await page.locator('label', { hasText: 'All asked' }).click(); // not after all
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await expect(page.getByRole('heading', { name: 'reading' })).toBeVisible();
  await page.getByRole('link', { name: /target/ }).click();
  await page.getByRole('button', { name: 'level 3, natural' }).click();
  await page.getByRole('link', { name: 'To the plan' }).click();
  await expect(page.getByText('Nothing is mixed today as asked').first()).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText('Earlier reactions to hair colour were not asked about.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Change grams' })).toHaveCount(0);

  await page.getByRole('link', { name: 'Go to the questions' }).click();
  await page.getByRole('button', { name: 'All asked: adult, nothing found' }).click();
  await page.getByRole('link', { name: /the plan/ }).click();
  await expect(page.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({ timeout: 300_000 });

  await page.goBack();
  await page
    .getByRole('group', { name: 'Ever a reaction to hair colour?' })
    .locator('label', { hasText: 'swelling' })
    .click();
  await page.getByRole('link', { name: /the plan/ }).click();
  await expect(page.getByText('There was a reaction to hair colour before.').first()).toBeVisible({
    timeout: 60_000,
  });
  await expect(page.getByRole('button', { name: 'Change grams' })).toHaveCount(0);
});
