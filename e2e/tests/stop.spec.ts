import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const hash = '#/visits/demo-salt_and_pepper_two_tones/plan';

/**
 * The whole search waits for ever, so that it can be stopped at any time; the one after it gets `seconds` instead of what
 * the page asks for (a slow machine finds as little), every later one is let through.
 */
async function slowly(page: Page, seconds: number | undefined) {
  const asked: (number | undefined)[] = [];
  await page.route('**/api/v1/plan', async (route) => {
    const document = route.request().postDataJSON();
    asked.push(document.options?.seconds);
    if (asked.length === 1) return;
    if (asked.length > 2 || seconds === undefined) return route.continue();
    const slow = { ...document, options: { ...document.options, seconds } };
    await route.continue({ postData: JSON.stringify(slow) });
  });
  return asked;
}
const search = (page: Page) => page.getByRole('region', { name: 'The search' });
const bowls = (page: Page) => page.getByRole('complementary', { name: 'Bowls' });

test('a search that is stopped says how much nearer bowls could come, and goes on to the end', async ({
  page,
  salon,
}) => {
  const asked = await slowly(page, 0);
  await open(page, salon, hash);
  const stop = search(page).getByRole('button', { name: 'Stop here' });
  await expect(stop).toBeVisible();
  const [answer] = await Promise.all([page.waitForResponse('**/api/v1/plan'), stop.click()]);
  const { report, bowls: found } = await answer.json();
  expect([report.stopped, found.length]).toEqual(['cancelled', 0]);
  expect(asked[1]).toBeGreaterThanOrEqual(2);

  await expect(search(page)).toContainText('Stopped before every mix was compared');
  await expect(search(page)).toContainText('No bowl found yet; that does not mean there is none.');
  await expect(search(page)).toContainText(
    `could come up to ${report.gap.toFixed(2)} levels nearer to the target`,
  );
  // Nothing is told of what was not looked for.
  await expect(page.getByText('Part of this is out of reach today')).toBeHidden();
  await expect(page.getByText('No bowl: nothing to colour.')).toBeHidden();
  await expect(bowls(page).getByRole('table')).toHaveCount(0);

  await search(page).getByRole('button', { name: 'Search on' }).click();
  await expect(bowls(page).getByRole('table').first()).toBeVisible({ timeout: 120_000 });
  await expect(search(page)).toBeHidden();
});

test('by keyboard the focus stays on the one button', async ({ page, salon }) => {
  await slowly(page, 0);
  await open(page, salon, hash);
  const button = search(page).getByRole('button');
  await expect(button).toHaveText('Stop here');
  await button.focus();
  await page.keyboard.press('Enter');
  await expect(button).toHaveText('Search on');
  await expect(button).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(bowls(page).getByRole('table').first()).toBeVisible({ timeout: 120_000 });
});

test('bowls that were found when the search was stopped are shown with what is open', async ({
  page,
  salon,
}) => {
  // The whole answer of the server as one that was stopped just before its end: its bowls are there, 0.31 levels open.
  await page.route('**/api/v1/plan', async (route) => {
    const answer = await route.fetch();
    const plan = await answer.json();
    const report = { ...plan.report, stopped: 'cancelled', gap: 0.31 };
    await route.fulfill({ json: { ...plan, report, routes: [], alternatives: [] } });
  });
  await open(page, salon, hash);
  await expect(search(page)).toContainText('These are the best bowls found so far.', { timeout: 120_000 });
  await expect(search(page)).toContainText('Other bowls could come up to 0.31 levels nearer to the target.');
  await expect(bowls(page).getByRole('table').first()).toBeVisible();
});

for (const scheme of ['light', 'dark'] as const) {
  test(`a stopped search is accessible in ${scheme}`, async ({ page, salon }) => {
    await slowly(page, 0);
    await page.emulateMedia({ colorScheme: scheme });
    await open(page, salon, hash);
    await search(page).getByRole('button', { name: 'Stop here' }).click();
    await expect(search(page)).toContainText('Stopped before every mix was compared');
    await expectAccessible(page);
    await page.setViewportSize({ width: 320, height: 844 });
    await expectNoSideScroll(page);
  });
}
