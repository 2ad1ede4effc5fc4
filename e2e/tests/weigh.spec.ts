import type { Page } from '@playwright/test';
import { SimulatedScale } from '../support/scale';
import type { Salon } from '../support/server';
import { expect, expectAccessible, expectNoSideScroll, open, test as base } from '../support/test';

const id = 'demo-toner_on_lightened';
const DISH = 180.4;

const scale = new SimulatedScale();
const test = base.extend({ more: [scale.more, { scope: 'test' }] });
test.afterAll(() => scale.remove());

const running = async (page: Page, salon: Salon) =>
  (await (await page.request.get(`${salon.url}api/v1/visits/${id}`)).json()).document.running;
const figure = (page: Page) => page.locator('.counter .figure');

async function atTheCounter(page: Page, salon: Salon) {
  await open(page, salon, `#/visits/${id}/clock`);
  await page.getByRole('button', { name: 'Hands on' }).click({ timeout: 180_000 });
  await expect(page.getByRole('timer')).toBeVisible();
  await expect(page.getByRole('banner')).toContainText('· saved', { timeout: 30_000 });
  await page.getByRole('link', { name: /bowl/ }).click();
  return page.getByRole('region', { name: /^Weigh bowl A/ });
}

test('a bowl is weighed by the scale: tare, each part counted down, only what has settled', async ({
  page,
  salon,
}) => {
  scale.shows(DISH);
  const counter = await atTheCounter(page, salon);
  const { parts } = (await running(page, salon)).bowls[0];
  const names: string[] = (await running(page, salon)).bowls[0].names;
  await expect(counter.getByText('put the bowl on, then tare').first()).toBeVisible();
  await page.locator('main').focus();
  await page.keyboard.press('PageDown'); // a pedal tares
  await expect(figure(page)).toHaveText(`${parts[0].grams.toFixed(1)} g`);

  let gross = DISH + parts[0].grams - 2;
  scale.shows(gross, false);
  await expect(figure(page)).toHaveText('2.0 g');
  await expect(counter.getByText('still moving')).toBeVisible();
  await page.keyboard.press('PageDown');
  await expect(counter.getByText('as soon as it is steady').first()).toBeVisible();
  expect((await running(page, salon)).additions ?? []).toEqual([]);
  gross = DISH + parts[0].grams + 0.2;
  scale.shows(gross);
  await expect(page.getByText(`g of ${names[0]} booked`)).toBeVisible();
  await expect
    .poll(async () => (await running(page, salon)).additions?.[0]?.grams)
    .toBeCloseTo(parts[0].grams + 0.2, 5);

  // The next part counts from what stands there now; too much of it is seen before it is booked.
  await expect(figure(page)).toHaveText(`${parts[1].grams.toFixed(1)} g`);
  scale.shows(gross + parts[1].grams + 3);
  await expect(figure(page)).toHaveText('+3.0 g');
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 844 });
  await expectNoSideScroll(page);
});

test('the screen follows the scale within a tenth of a second', async ({ page, salon }) => {
  scale.shows(0);
  await atTheCounter(page, salon);
  await page.getByRole('button', { name: 'Tare' }).click();
  const took: number[] = [];
  for (let tenths = 11; tenths <= 30; tenths++) {
    const seen = page.waitForFunction(
      (words) => document.querySelector('.counter .pan')?.textContent?.includes(words),
      `${(tenths / 10).toFixed(1)} g`,
    );
    await page.waitForTimeout(30);
    const start = performance.now();
    scale.shows(tenths / 10);
    await seen;
    took.push(performance.now() - start);
  }
  // The quickest of twenty: what a loaded machine adds is not the scale's.
  expect(Math.min(...took), took.map((ms) => Math.round(ms)).join(' ')).toBeLessThanOrEqual(100);
});

test('with the scale silent its figures are typed', async ({ page, salon, watch }) => {
  watch.allow.push(/ERR_CONNECTION_REFUSED|Failed to load resource/);
  scale.shows(DISH);
  const counter = await atTheCounter(page, salon);
  await expect(counter.getByText('put the bowl on, then tare').first()).toBeVisible();
  await salon.stop();
  await expect(counter.getByText('The scale says nothing.')).toBeVisible();
  await counter.getByLabel('The scale shows').fill('12.5');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/12.5 g of .* booked/)).toBeVisible();
  await salon.start();
  await expect.poll(async () => (await running(page, salon)).additions?.[0]?.grams).toBe(12.5);
});

test('ounces are shown in steps that can be weighed, and typed as ounces', async ({ page, salon }) => {
  await page.addInitScript(() => localStorage.setItem('strandline.settings', '{"mass":"oz"}'));
  scale.shows(0, false);
  const counter = await atTheCounter(page, salon);
  await counter.getByRole('button', { name: 'Type instead' }).click();
  const { parts } = (await running(page, salon)).bowls[0];
  const ounces = Math.round(parts[0].grams / 28.349523125 / 0.02) * 0.02;
  await expect(figure(page)).toHaveText(`${ounces.toFixed(2)} oz`);
  await counter.getByLabel('The scale shows').fill(ounces.toFixed(2));
  await page.keyboard.press('Enter');
  await expect
    .poll(async () => Math.abs((await running(page, salon)).additions?.[0]?.grams - parts[0].grams))
    .toBeLessThan(0.35);
  await expect(counter.getByText(/too much of/)).toBeHidden();
});
