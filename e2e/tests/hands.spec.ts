import type { Locator, Page } from '@playwright/test';
import type { Salon } from '../support/server';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// Its bowls stay on for longer than a toner's.
const id = 'demo-my_own_bowls';
const hash = `#/visits/${id}/clock`;
const saved = (page: Page) => expect(page.getByRole('banner')).toContainText('· saved', { timeout: 30_000 });
const facts = async (page: Page, salon: Salon) =>
  (await (await page.request.get(`${salon.url}api/v1/visits/${id}/facts`)).json()).facts as {
    kind: string;
    body: Record<string, unknown>;
  }[];

async function handsOn(page: Page, salon: Salon) {
  await page.clock.install();
  await open(page, salon, hash);
  await page.getByRole('button', { name: 'Hands on' }).click({ timeout: 180_000 });
  await expect(page.getByRole('timer')).toBeVisible();
  await saved(page);
}

/** The plan runs on by itself, minute by minute, until this is seen. */
async function untilSeen(page: Page, what: Locator) {
  for (let minute = 0; minute < 40 && !(await what.isVisible()); minute++) {
    await page.clock.fastForward('01:00');
    await page.clock.runFor(600);
  }
  await expect(what).toBeVisible();
}

test('the client is asked how it feels; stinging leads to stop', async ({ page, salon }) => {
  await handsOn(page, salon);
  const alarm = page.getByRole('alert').filter({ hasText: 'Ask how it feels' });
  await untilSeen(page, alarm);
  const ask = page.getByRole('region', { name: 'How does it feel?' });
  await ask.getByRole('button', { name: 'itches' }).click();
  await expect(ask).toContainText('Look at the skin now');
  await expect(alarm).toBeHidden();
  await expectAccessible(page);
  await ask.getByRole('button', { name: 'stings' }).click();
  await ask.getByRole('button', { name: 'Stop now' }).click();
  await expect(page.getByText(/Stopped at/).first()).toBeVisible();
  const told = (await facts(page, salon)).filter((one) => one.kind === 'comfort');
  expect(told.map((one) => one.body.feels)).toEqual(['itches', 'stings']);
});

test('a note for the hands is written once and comes whenever it is due', async ({ page, salon }) => {
  await handsOn(page, salon);
  const write = page.getByRole('button', { name: 'Note for the hands' });
  await untilSeen(page, write);
  await write.click();
  const sheet = page.getByRole('dialog', { name: 'Note for the hands' });
  await sheet.getByLabel('How it is done here').fill('From the nape up, comb through once.');
  await expectAccessible(page);
  await sheet.getByRole('button', { name: 'Keep' }).click();
  await expect(page.getByText('From the nape up, comb through once.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('From the nape up, comb through once.')).toBeVisible();
});

test('a second client fits between, with what happens when the first is late', async ({ page, salon }) => {
  await handsOn(page, salon);
  await page.getByRole('button', { name: 'A second client …' }).click();
  const sheet = page.getByRole('dialog', { name: 'A second client between' });
  await sheet.getByRole('button', { name: /Toner on lightened/ }).click();
  await expect(sheet.getByText(/^(From|Only after this one, from) \d\d:\d\d/)).toBeVisible({
    timeout: 120_000,
  });
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 844 });
  await expectNoSideScroll(page);
});

test('stop now without a running clock freezes the visit until somebody says why it goes on', async ({
  page,
  salon,
}) => {
  await open(page, salon, hash);
  await expect(page.getByRole('button', { name: 'Hands on' })).toBeEnabled({ timeout: 180_000 });
  await page.getByRole('button', { name: 'Stop now' }).click();
  await page.getByRole('dialog', { name: 'Stop now' }).getByRole('button', { name: 'Close' }).last().click();
  await expect(page.getByText(/Stopped at/)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Hands on' })).toBeDisabled();
  await page.reload(); // it stands on every device
  await expect(page.getByText(/Stopped at/)).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Pressed by mistake' }).click();
  await expect(page.getByRole('button', { name: 'Hands on' })).toBeEnabled({ timeout: 180_000 });
  expect((await facts(page, salon)).map((one) => one.kind)).toEqual(['stopped', 'stopped.over']);
});
