import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const passphrase = 'brown tape on blue jars';

test.use({ more: ['--listen', '127.0.0.2', '--listen-port', '0'] });

test('a device elsewhere is let in by a code, and taken off the list again', async ({
  page,
  browser,
  salon,
}) => {
  const data = { name: 'Ada Invented', passphrase, zone: 'Europe/Vienna', shelf: 'invented' };
  expect((await page.request.post(`${salon.url}api/v1/door/found`, { data })).status()).toBe(201);

  const elsewhere = await browser.newContext({
    ignoreHTTPSErrors: true,
    viewport: { width: 390, height: 844 },
  });
  const tablet = await elsewhere.newPage();
  await tablet.goto(`https://${salon.lan}/`);
  await expect(tablet.getByText('This device is not paired.')).toBeVisible();
  await expect(tablet.getByLabel('Passphrase')).toHaveCount(0);
  await expectAccessible(tablet);
  await expectNoSideScroll(tablet);

  await open(page, salon, '#/people');
  await page.getByRole('button', { name: 'Let a device in' }).click();
  await expect(page.getByRole('img', { name: 'Pair it' })).toBeVisible();
  await page.getByRole('radio', { name: salon.lan }).check();
  const link = (await page.getByText(/#\/pair\//).textContent()) ?? '';
  expect(link).toContain(`https://${salon.lan}/#/pair/`);
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSideScroll(page);

  await tablet.goto(link);
  await expectAccessible(tablet);
  await tablet.getByLabel('What this device is called').fill('Tablet');
  await tablet.getByRole('button', { name: 'Pair this device' }).click();
  await tablet.getByRole('button', { name: 'Somebody else, or no PIN yet' }).click();
  await tablet.getByLabel('Name').fill('Ada Invented');
  await tablet.getByLabel('Passphrase').fill(passphrase);
  await tablet.getByRole('button', { name: 'Sign in' }).click();
  await expect(tablet.getByRole('button', { name: 'New visit' })).toBeVisible();

  // The code was for one device; off the list, this one gets nothing any more.
  await page.reload();
  await page.getByRole('button', { name: /Take off the list/ }).click();
  await tablet.reload();
  await expect(tablet.getByText('This device is not paired.')).toBeVisible();
  await tablet.goto(link);
  await tablet.getByLabel('What this device is called').fill('Tablet');
  await tablet.getByRole('button', { name: 'Pair this device' }).click();
  await expect(tablet.getByRole('alert')).toContainText('lets nobody in any more');
  await elsewhere.close();
});

test('all that is kept of a person is shown, and erased by name', async ({ page, salon }) => {
  const visits = `${salon.url}api/v1/visits/demo-all_over_brown`;
  const { seq } = (await (await page.request.get(visits)).json()) as { seq: number };
  const data = { seq, entry: 'handed-in-by-a-device' };
  const ended = (await (await page.request.post(`${visits}/hand-in`, { data })).json()) as { person: string };
  await open(page, salon, `#/clients/${ended.person}`);
  const name = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  await page.getByText('What is kept of this person').click();
  await page.getByRole('button', { name: 'Show all of it' }).click();
  await expect(page.getByText('visit.handed_in')).toBeVisible();
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSideScroll(page);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  expect((await saved).suggestedFilename()).toBe(`${ended.person}.json`);

  const erase = page.getByRole('button', { name: 'Erase for good' });
  await page.getByLabel('To erase').fill('Somebody Else');
  await expect(erase).toBeDisabled();
  await page.getByLabel('To erase').fill(name);
  await erase.click();
  await expect(page.getByText('Erased.')).toBeVisible();
  await expect(page.getByText(name)).toHaveCount(0);
  expect((await page.request.get(visits)).status()).toBe(410);
});

test('a running clock is not locked away, and a locked page tells of it', async ({ page, salon }) => {
  const data = {
    name: 'Ada Invented',
    passphrase,
    zone: 'Europe/Vienna',
    shelf: 'invented',
    colours_hair: 'yes',
  };
  expect((await page.request.post(`${salon.url}api/v1/door/found`, { data })).status()).toBe(201);
  await page.clock.install();
  await open(page, salon, '#/visits/demo-toner_on_lightened/clock');
  await page.getByRole('button', { name: 'Hands on' }).click({ timeout: 180_000 });
  const timer = page.getByRole('timer');
  await expect(timer).toBeVisible();
  await page.clock.fastForward('35:00');
  await expect(timer).toBeVisible();
  await page.getByRole('button', { name: 'Lock' }).click();
  await expect(page.getByRole('heading', { name: 'Locked' })).toBeVisible();
  await expect(page.getByText(/A clock is running: minute 3\d/)).toBeVisible();
  await expectAccessible(page);
});
