import { asked } from '../support/asked';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const silent = /ERR_CONNECTION_REFUSED|Failed to load resource/;

async function atTheEnd(page: import('@playwright/test').Page, url: string): Promise<string> {
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByLabel('Label', { exact: true }).fill('Q. R.');
  await asked(page);
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await expect(page.getByRole('heading', { name: 'reading' })).toBeVisible();
  await expect(page.getByRole('banner')).toContainText('· saved');
  const id = /visits\/([^/]+)/.exec(page.url())?.[1] ?? '';
  await page.goto(`${url}#/visits/${id}/record`);
  await expect(page.getByRole('button', { name: 'Hand in', exact: true })).toBeVisible();
  return id;
}

test('a visit handed in while the server is away waits on the device and ends by itself', async ({
  page,
  salon,
  watch,
}) => {
  watch.allow.push(silent);
  await open(page, salon);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  const id = await atTheEnd(page, salon.url);
  await page.getByLabel('What they said').fill('As I wished');
  await salon.stop();
  await page.getByRole('button', { name: 'Hand in', exact: true }).click();
  await expect(page.getByText('The hand-in waits for the server')).toBeVisible();
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 640 });
  await expectNoSideScroll(page);
  // The page is closed and opened again, still without the server: nothing is lost.
  await page.reload();
  await expect(page.getByText('The salon’s server does not answer').first()).toBeVisible();
  await salon.start();
  await expect(page.getByRole('heading', { name: 'Record of the visit' })).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText('“As I wished”')).toBeVisible();
  const told = await (await page.request.get(`${salon.url}api/v1/visits/${id}/facts`)).json();
  expect(told.facts.filter((one: { kind: string }) => one.kind === 'result')).toHaveLength(1);
});

test('a visit that another device ended meanwhile is settled by a person', async ({
  page,
  salon,
  context,
  watch,
}) => {
  watch.allow.push(silent);
  await open(page, salon);
  const id = await atTheEnd(page, salon.url);
  const other = await context.newPage();
  await open(other, salon, `#/visits/${id}/record`);
  await page.getByLabel('What they said').fill('Seen here');
  // The first device asks and is not heard.
  await page.route('**/hand-in', (route) => route.abort('connectionrefused'));
  await page.getByRole('button', { name: 'Hand in', exact: true }).click();
  await expect(page.getByText('The hand-in waits for the server')).toBeVisible();
  await other.getByRole('button', { name: 'Hand in', exact: true }).click();
  await expect(other.getByRole('heading', { name: 'aftercare' })).toBeVisible({ timeout: 60_000 });
  await page.unroute('**/hand-in');
  await expect(page.getByRole('button', { name: 'Drop what this device noted' })).toBeVisible({
    timeout: 20_000,
  });
  await page.getByRole('button', { name: 'Add what this device noted' }).click();
  await expect(page.getByText('“Seen here”')).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole('button', { name: 'Drop what this device noted' })).toHaveCount(0);
});
