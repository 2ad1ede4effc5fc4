import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// Grams on the shelf: received, counted while another device counts, undone, pasted, and what the report tells.
test('stock is received, counted by two, undone and reported', async ({ page, salon }) => {
  await open(page, salon);
  await page.getByRole('link', { name: 'Stock', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'stock' })).toBeVisible();
  await expect(page.getByText('Nothing is counted yet')).toBeVisible();
  await expectAccessible(page);

  // A delivery: one search, Enter, and the product is open.
  const find = page.getByLabel('Scan a barcode, or search');
  await find.fill('permanent 7 natural');
  await find.press('Enter');
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('radio', { name: 'Received' }).check();
  await sheet.getByLabel(/grams/i).first().fill('120');
  await sheet.getByLabel('Batch, as printed').fill('L1');
  await sheet.getByLabel('Use before').fill('5/2031');
  await sheet.getByLabel('Paid for all of it').fill('18');
  await expectAccessible(page);
  await sheet.getByRole('button', { name: 'Received: 120.0 g' }).click();
  await expect(sheet.getByText('received 120.0 g')).toBeVisible();
  await expect(sheet.getByText('L1', { exact: false }).first()).toBeVisible();

  // Another device counts first: this one is told, and its number stands until it is said again.
  await sheet.getByRole('radio', { name: 'Count' }).check();
  await sheet.getByLabel('Grams that stand there now').fill('100');
  const stock = await (await page.request.get(`${salon.url}api/v1/stock`)).json();
  const item = stock.items.find((one: { grams: number }) => one.grams === 120);
  const theirs = { what: 'count', product: item.product, grams: 110, seen: item.seen };
  const answer = await page.request.post(`${salon.url}api/v1/stock/moves`, { data: { moves: [theirs] } });
  expect(answer.status()).toBe(201);
  await sheet.getByRole('button', { name: 'There are 100.0 g' }).click();
  await expect(sheet.getByText('110.0 g are known there now', { exact: false })).toBeVisible();
  await expect(sheet.getByLabel('Grams that stand there now')).toHaveValue('100');
  await sheet.getByRole('button', { name: 'There are 100.0 g' }).click();
  await expect(sheet.getByText('counted 100.0 g')).toBeVisible();

  // Thrown away by mistake, and back.
  await sheet.getByRole('radio', { name: 'Thrown away' }).check();
  await sheet.getByLabel('Grams thrown away').fill('30');
  await sheet.getByRole('button', { name: 'Thrown away: 30.0 g' }).click();
  await expect(sheet.getByText('thrown away 30.0 g')).toBeVisible();
  await sheet.getByRole('button', { name: 'Undo' }).first().click();
  await expect(sheet.getByText('counter-movement')).toBeVisible();
  await sheet.getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('button', { name: /7 natural.*100\.0 g/s }).first()).toBeVisible();

  // A delivery note, and what the report says of all of it.
  await page.getByRole('button', { name: 'Paste a list' }).click();
  await page.getByLabel('The list').fill(`product;grams;paid\n${item.product};60;12\nnothing;1;1`);
  await expect(page.getByText('Understood: 1 · not understood: 1')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Keep what was understood: 1' }).click();
  await expect(page.getByText('Movements kept: 1')).toBeVisible();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await page.getByRole('link', { name: 'Report' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'report' })).toBeVisible();
  await expect(page.getByRole('table', { name: 'What was paid' })).toBeVisible();
  await expectAccessible(page);
  for (const width of [320, 1180]) {
    await page.setViewportSize({ width, height: 820 });
    await expectNoSideScroll(page);
  }
});
