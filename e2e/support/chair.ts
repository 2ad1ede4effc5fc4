import { expect, type Page } from '@playwright/test';
import type { SimulatedScale } from './scale';
import type { Salon } from './server';

const idOf = (page: Page) => /#\/visits\/([^/]+)/.exec(page.url())![1]!;

/** What the server keeps of the running visit that is on screen; undefined before hands are on. */
export const running = async (page: Page, salon: Salon) =>
  (await (await page.request.get(`${salon.url}api/v1/visits/${idOf(page)}`)).json()).document.running;

/** The client's name, drawn in one go. */
export async function signed(page: Page): Promise<void> {
  const pad = page.getByRole('img', { name: 'Draw the name here' });
  await expect(pad).toBeVisible({ timeout: 180_000 });
  await pad.scrollIntoViewIfNeeded();
  const box = (await pad.boundingBox())!;
  await page.mouse.move(box.x + 40, box.y + 40);
  await page.mouse.down();
  for (let i = 1; i < 8; i++) await page.mouse.move(box.x + 40 + i * 20, box.y + 40 + (i % 2) * 25);
  await page.mouse.up();
}

/** From the plan over the agreement to the bowl. */
export async function agreed(page: Page): Promise<void> {
  await page.getByRole('link', { name: /agree/ }).click();
  await signed(page);
  await page.getByRole('button', { name: 'I agree' }).click();
  await page.getByRole('button', { name: 'Hands on: to the bowl' }).click();
}

/** Every part of every bowl, by the scale and a pedal. */
export async function weighed(page: Page, salon: Salon, scale: SimulatedScale): Promise<void> {
  await expect
    .poll(async () => (await running(page, salon))?.bowls.length, { timeout: 30_000 })
    .toBeGreaterThan(0);
  const { bowls } = await running(page, salon);
  for (const [place, { label, parts }] of bowls.entries()) {
    const which = page
      .getByRole('group', { name: 'Which bowl' })
      .locator('label', { hasText: `bowl ${label}` });
    if (bowls.length > 1) await which.click();
    const counter = page.getByRole('region', { name: new RegExp(`^Weigh bowl ${label}`) });
    // Another dish each time: tared by what still stood there, every part would be wrong.
    let gross = 150 + place;
    scale.shows(gross);
    await expect(
      counter.getByText(`${gross.toFixed(1)} g on the scale: put the bowl on, then tare`).first(),
    ).toBeVisible();
    await page.locator('main').focus();
    await page.keyboard.press('PageDown');
    for (const part of parts) {
      await expect(page.locator('.counter .figure')).toHaveText(`${part.grams.toFixed(1)} g`);
      gross += part.grams;
      scale.shows(gross);
      await expect(counter.getByText('steady').first()).toBeVisible();
      await expect(page.locator('.counter .figure')).toHaveText('0.0 g');
      await page.keyboard.press('PageDown');
    }
    await expect(counter.getByText('All parts are in')).toBeVisible();
  }
}
