import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const passphrase = 'brown tape on blue jars';

test('a salon is founded, locked and opened again with nothing lost', async ({ page, salon, watch }) => {
  // Each refusal that is tried here.
  watch.allow.push(/status of 401/);
  await open(page, salon);
  await expect(page.getByText('Nobody has to sign in here')).toBeVisible();
  await page.getByRole('link', { name: 'Set up the salon' }).click();
  await page.getByLabel('Your name').fill('Ada Invented');
  await page.getByLabel('New passphrase').fill('short');
  await expect(page.getByText('5 of 12 characters')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Make the salon' })).toBeDisabled();
  await page.getByLabel('New passphrase').fill(passphrase);
  await page.getByLabel('Once more').fill(passphrase);
  await page.getByLabel('Time zone').fill('Europe/Vienna');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Make the salon' }).click();
  await expect(page.getByRole('heading', { name: 'Who works here' })).toBeVisible();
  await expectAccessible(page);

  // A PIN, and this device as one it opens.
  await page.getByText('PIN for paired devices').click();
  await page.getByLabel('New PIN').fill('493027');
  await page.getByLabel('Passphrase now').first().fill(passphrase);
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved.')).toBeVisible();
  await page.getByLabel('What this device is called').fill('Tablet');
  await page.getByRole('button', { name: 'Pair this device' }).click();
  await expect(page.getByText('This device is paired.')).toBeVisible();

  await page.goto(`${salon.url}#/`);
  const visits = page.getByRole('list', { name: 'All visits, newest first' }).getByRole('link');
  await expect(visits.first()).toBeVisible();
  await page.getByRole('button', { name: 'New visit' }).click();
  await page.getByLabel('Label', { exact: true }).fill('Half typed');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Lock' }).click();
  await expect(page.getByRole('heading', { name: 'Locked' })).toBeVisible();
  await expect(visits.first()).toBeHidden();

  await page.getByRole('button', { name: 'Ada Invented' }).click();
  const key = await page.getByRole('button', { name: '5', exact: true }).boundingBox();
  expect(Math.min(key!.width, key!.height)).toBeGreaterThanOrEqual(64);
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSideScroll(page);
  for (const digit of '111222') await page.getByRole('button', { name: digit, exact: true }).click();
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('alert')).toContainText('do not match');
  await page.keyboard.type('493027');
  await page.keyboard.press('Enter');
  await expect(visits.first()).toBeVisible();
  await page.getByRole('button', { name: 'New visit' }).click();
  await expect(page.getByLabel('Label', { exact: true })).toHaveValue('Half typed');
  await page.keyboard.press('Escape');

  // Locked, a reload opens nothing.
  await page.getByRole('button', { name: 'Lock' }).click();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
  await expect(visits.first()).toBeHidden();
});

test('a change made while the session ends is stored once somebody is in again', async ({
  page,
  salon,
  watch,
}) => {
  watch.allow.push(/status of 401/);
  const api = `${salon.url}api/v1/`;
  const owner = { name: 'Ada Invented', passphrase, zone: 'Europe/Vienna', shelf: 'invented' };
  const data = { ...owner, colours_hair: 'yes' };
  expect((await page.request.post(`${api}door/found`, { data })).status()).toBe(201);
  await open(page, salon, '#/visits/demo-all_over_brown/assess');
  const white = page.getByRole('spinbutton', { name: 'White' });
  await expect(white).toBeVisible();
  // Ended elsewhere: by an owner who signs everybody out, say.
  await page.request.post(`${api}door/sign-out`, { data: {} });
  await white.focus();
  await page.keyboard.press('End');
  await expect(page.getByRole('heading', { name: 'Locked' })).toBeVisible();
  await expect(white).toBeHidden();
  await page.getByLabel('Passphrase').fill(passphrase);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(white).toHaveAttribute('aria-valuenow', '100');
  await expect(page.getByRole('banner')).toContainText('· saved');
});
