import { expect, open, test } from '../support/test';

const id = 'demo-all_over_brown';

test('the steps of a visit open it once, and what was tapped last goes along', async ({ page, salon }) => {
  let opened = 0;
  page.on('request', (request) => {
    if (request.method() === 'GET' && request.url().endsWith(`/visits/${id}`)) opened++;
  });
  await open(page, salon, `#/visits/${id}/aim`);
  await page.getByRole('button', { name: 'level 5, gold' }).click();
  await page.getByRole('link', { name: 'To the plan' }).click();
  await expect(
    page.getByRole('complementary', { name: 'Bowls' }).getByRole('heading', { level: 2 }).first(),
  ).toBeVisible({
    timeout: 120_000,
  });
  await page.getByRole('link', { name: /target/ }).click();
  await expect(page.getByText('level 5, gold').first()).toBeVisible();
  expect(opened).toBe(1);
});

test('a visit that is left and opened again before it is stored shows its last change', async ({
  page,
  salon,
}) => {
  // The server takes its time to store.
  await page.route(`**/api/v1/visits/${id}`, async (route) => {
    if (route.request().method() === 'PUT') await new Promise((go) => setTimeout(go, 1500));
    await route.continue();
  });
  await open(page, salon, `#/visits/${id}/assess`);
  const white = page.getByRole('spinbutton', { name: 'White' });
  await white.focus();
  await page.keyboard.press('End');
  await expect(white).toHaveAttribute('aria-valuenow', '100');
  await page.getByRole('link', { name: 'All visits' }).click();
  await expect(page.getByRole('heading', { name: 'Visits' })).toBeVisible();
  await page.goBack();
  await expect(white).toHaveAttribute('aria-valuenow', '100');
  await expect(page.getByRole('banner')).toContainText('· saved');
  await expect(page.getByText('Two versions of this visit')).toHaveCount(0);
  await expect(page.getByText(/changed elsewhere|another device/)).toHaveCount(0);
});

test('a way back is not offered any more once the visit is opened anew', async ({ page, salon }) => {
  await open(page, salon, `#/visits/${id}/assess`);
  await page.getByRole('button', { name: /^Copy / }).click();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeVisible();
  await expect(page.getByRole('banner')).toContainText('· saved');
  await page.getByRole('link', { name: 'All visits' }).click();
  await expect(page.getByRole('heading', { name: 'Visits' })).toBeVisible();
  await page.goBack();
  await expect(page.getByRole('spinbutton', { name: 'White' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveCount(0);
});
