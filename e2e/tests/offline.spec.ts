import { expect, open, test } from '../support/test';

test('the app opens with the server gone, and says so', async ({ page, salon, watch }) => {
  watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource|ERR_INTERNET/);
  await open(page, salon);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await salon.stop();
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.getByText('The salon’s server does not answer')).toBeVisible();
  await expect(page.getByText('The list of visits could not be read.')).toBeVisible();

  // Nobody presses anything: the notice and the failure go when their cause is gone.
  await salon.start();
  await expect(page.getByRole('link', { name: /changed/ }).first()).toBeVisible();
  await expect(page.getByText('The salon’s server does not answer')).toBeHidden();
  await expect(page.getByText('The list of visits could not be read.')).toBeHidden();
});

test('a change made while the server is gone is stored when it is back', async ({ page, salon, watch }) => {
  watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  await open(page, salon, '#/visits/demo-toner_on_lightened/assess');
  const white = page.getByRole('spinbutton', { name: 'White' });
  await expect(white).toBeVisible();
  await salon.stop();
  await white.focus();
  await page.keyboard.press('End');
  await expect(page.getByRole('banner')).toContainText('not saved yet');
  await salon.start();
  await expect(page.getByRole('banner')).toContainText('· saved', {
    timeout: 20_000,
  });
  await page.reload();
  await expect(white).toHaveAttribute('aria-valuenow', '100');
});

test('a plan that the silent server did not make is made once it speaks again', async ({
  page,
  salon,
  watch,
}) => {
  watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  await open(page, salon, '#/visits/demo-two_levels_lighter/aim');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect(page.getByRole('link', { name: 'To the plan' })).toBeVisible();
  await salon.stop();
  await page.getByRole('link', { name: 'To the plan' }).click();
  const failure = page.getByText('The server did not answer, so this was not worked out.');
  await expect(failure.first()).toBeVisible();
  await salon.start();
  await expect(failure).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({ timeout: 300_000 });
});

test.describe('before the device keeps the app', () => {
  test.use({ serviceWorkers: 'block' });

  test('a step that did not come for a silent server comes once it speaks', async ({ page, salon, watch }) => {
    watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource|service worker not registered/);
    await open(page, salon, '#/visits/demo-two_levels_lighter/aim');
    await expect(page.getByRole('link', { name: 'To the plan' })).toBeVisible();
    await salon.stop();
    await page.getByRole('link', { name: 'To the plan' }).click();
    await expect(page.getByText('The salon’s server does not answer').first()).toBeVisible();
    await salon.start();
    await expect(page.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({ timeout: 300_000 });
  });
});

test('a change made offline outlives the page', async ({ page, salon, watch }) => {
  watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  await open(page, salon, '#/visits/demo-toner_on_lightened/assess');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  const white = page.getByRole('spinbutton', { name: 'White' });
  await expect(white).toBeVisible();
  await salon.stop();
  await white.focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('PageUp');
  await expect(white).toHaveAttribute('aria-valuenow', '25');
  await expect(page.getByRole('banner')).toContainText('not saved yet');
  await page.waitForTimeout(300);
  await page.reload();
  await expect(white).toHaveAttribute('aria-valuenow', '25');
  await expect(page.getByRole('banner')).toContainText('not saved yet');
  await salon.start();
  await expect(page.getByRole('banner')).toContainText('· saved', { timeout: 20_000 });
  await page.reload();
  await expect(white).toHaveAttribute('aria-valuenow', '25');
});

test('an answer that is lost stops no saving and doubles nothing', async ({ page, salon, watch }) => {
  watch.allow.push(/ERR_CONNECTION_RESET|Failed to load resource/);
  let lost = 0;
  await page.route('**/api/v1/visits/*', async (route) => {
    if (route.request().method() !== 'PUT' || lost >= 2) return route.continue();
    await route.fetch();
    lost++;
    await route.abort('connectionreset');
  });
  const id = 'demo-toner_on_lightened';
  await open(page, salon, `#/visits/${id}/assess`);
  const white = page.getByRole('spinbutton', { name: 'White' });
  await white.focus();
  await page.keyboard.press('PageUp');
  await expect.poll(() => lost).toBe(1);
  await page.keyboard.press('PageUp'); // before anybody knows that the first is stored
  await expect(page.getByRole('banner')).toContainText('· saved', { timeout: 30_000 });
  expect(lost).toBe(2);
  const stored = await (await page.request.get(`${salon.url}api/v1/visits/${id}`)).json();
  expect(stored.seq).toBe(3);
});

test('it can be installed', async ({ page, salon }) => {
  await open(page, salon);
  const href = await page.locator('link[rel="manifest"]').getAttribute('href');
  const manifest = await page.evaluate(async (url) => (await fetch(url!)).json(), href);
  expect(manifest.display).toBe('standalone');
  for (const icon of manifest.icons as { src: string; sizes: string }[]) {
    const size = await page.evaluate(async (src) => {
      const picture = await createImageBitmap(await (await fetch(src)).blob());
      return `${picture.width}x${picture.height}`;
    }, icon.src);
    expect(size).toBe(icon.sizes);
  }
});

test('a store that is not well is told in one line, and no more once it is', async ({
  page,
  salon,
  watch,
}) => {
  watch.allow.push(/Failed to load resource/);
  let well = false;
  await page.route('**/api/v1/health', (route) =>
    well
      ? route.continue()
      : route.fulfill({
          status: 503,
          json: { problems: [{ code: 'entry_broken', path: '', params: { seq: '3' } }] },
        }),
  );
  await open(page, salon);
  const line = page.getByRole('status').filter({ hasText: 'The salon’s file needs a look' });
  await expect(line).toContainText('changed after it was written');
  well = true;
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect(line).toBeHidden();
});
