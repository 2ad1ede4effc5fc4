import { asked } from '../support/asked';
import { expect, expectAccessible, open, test } from '../support/test';

const hash = '#/visits/demo-toner_on_lightened/plan';

test('two shades and a developer are judged in at most eight taps, before any plan', async ({
  page,
  salon,
}) => {
  await page.route('**/api/v1/plan', () => new Promise(() => undefined)); // a search that never ends
  await open(page, salon);
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByLabel('Label', { exact: true }).fill('O. B.');
  await asked(page);
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await expect(page.getByRole('heading', { name: 'reading' })).toBeVisible();

  let taps = 0;
  const tap = async (target: ReturnType<typeof page.getByRole>) => {
    taps++;
    await target.click();
  };
  await tap(page.getByRole('link', { name: /the plan/ }));
  await tap(page.getByRole('button', { name: 'Mix your own' }));
  const sheet = page.getByRole('dialog', { name: 'Your own bowl' });
  await tap(sheet.getByRole('button', { name: '5 natural', exact: true }));
  await tap(sheet.getByRole('button', { name: '5 gold', exact: true }));
  await tap(sheet.getByRole('button', { name: 'developer 3 %' }));
  await expect(sheet.getByText(/^Gives level /)).toBeVisible({ timeout: 60_000 });
  expect(taps).toBeLessThanOrEqual(8);
  await expectAccessible(page);

  // The same rules: what no bowl of the range may be says why at once.
  await sheet.getByRole('button', { name: 'developer 12 %' }).click();
  await expect(sheet.getByText(/^▲ Not as it is: /)).toBeVisible({ timeout: 60_000 });

  // Kept on this device, beside what the search will find; nothing of the visit changes.
  await page.reload();
  const kept = page.getByRole('region', { name: 'Yours, beside the suggestion' });
  await expect(kept).toContainText('5 natural');
  await expect(kept).toContainText('Not as it is', { timeout: 60_000 });
  await expect(page.getByText('Your own bowls', { exact: true })).toBeHidden();
});

test('a bowl of one’s own is begun from the plan, made right and used', async ({ page, salon }) => {
  await open(page, salon, hash);
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  await expect(bowls.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({ timeout: 300_000 });
  await bowls.getByRole('button', { name: 'Mix your own' }).click();
  const sheet = page.getByRole('dialog', { name: 'Your own bowl' });
  await sheet.getByRole('button', { name: 'Start from the plan’s bowls' }).click();
  await expect(sheet.getByText(/Beside the suggestion: hardly different/)).toBeVisible({ timeout: 60_000 });
  // Too long for its range: stopped, and the change that makes it right is offered.
  const minutes = sheet.getByRole('spinbutton', { name: 'Time on the hair' });
  await minutes.focus();
  await page.keyboard.press('End');
  await expect(sheet.getByText(/^▲ Not as it is: /)).toBeVisible({ timeout: 60_000 });
  await sheet.getByRole('button', { name: 'What would make it right?' }).click();
  await sheet.getByRole('button', { name: 'Make this change' }).click({ timeout: 300_000 });
  await expect(sheet.getByText(/^▲ Not as it is: /)).toBeHidden({ timeout: 60_000 });
  expect(Number(await minutes.getAttribute('aria-valuenow'))).toBeLessThan(120);
  await sheet.getByRole('button', { name: 'Use these bowls' }).click();
  await expect(bowls.getByText('Your own bowls', { exact: true })).toBeVisible({ timeout: 60_000 });
});
