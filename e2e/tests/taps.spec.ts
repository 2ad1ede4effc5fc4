import type { Locator, Page } from '@playwright/test';
import { daysAgo } from '../support/asked';
import { signed } from '../support/chair';
import { expect, expectHair, open, test } from '../support/test';

/** A finger: every touch counts, holding counts once. */
class Finger {
  taps = 0;
  constructor(readonly page: Page) {}

  async tap(target: Locator): Promise<void> {
    this.taps++;
    await target.click();
  }

  /** Holds a stepper's button until `value` reads as wished. */
  async hold(button: Locator, value: Locator, until: string): Promise<void> {
    this.taps++;
    const box = await button.boundingBox();
    if (!box) throw new Error('nothing to hold');
    await this.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await this.page.mouse.down();
    await expect
      .poll(async () => Number(await value.getAttribute('aria-valuenow')), {
        intervals: [20],
      })
      .toBeGreaterThanOrEqual(Number(until));
    await this.page.mouse.up();
  }
}

const readings = [
  { area: 'front hairline', level: 5, white: 50 },
  { area: 'top', level: 5, white: 25 },
  { area: 'crown', level: 5, white: 15 },
  { area: 'sides', level: 6, white: 30 },
  { area: 'nape', level: 4, white: 5 },
];

test('a new head of five areas takes at most 60 taps, a returning one at most 12', async ({
  page,
  salon,
}) => {
  await open(page, salon);
  const first = new Finger(page);
  await first.tap(page.getByRole('button', { name: 'New visit' }).first());
  await page.getByLabel('Label', { exact: true }).fill('N. H.');
  await first.tap(page.getByRole('button', { name: 'Start with the reading' }));
  await expectHair(page, 5);

  const chip = (words: string) => page.locator('label', { has: page.getByText(words, { exact: true }) });
  const white = page.getByRole('spinbutton', { name: 'White' });
  for (const { area, level, white: share } of readings) {
    await first.tap(chip(area));
    await first.tap(page.getByRole('button', { name: `level ${level}, natural` }));
    await first.hold(page.getByRole('button', { name: 'More: White' }), white, String(share));
    await first.tap(chip('lengths'));
    await first.tap(page.getByRole('button', { name: 'level 6, natural' }));
    await first.tap(chip('gold'));
    await first.tap(chip('regrowth'));
  }
  expect(first.taps).toBeLessThanOrEqual(60);
  await expect(page.getByRole('button', { name: /nape/, pressed: true })).toContainText('level 4');
  await expect(page.getByRole('banner')).toContainText('· saved');

  const again = new Finger(page);
  await again.tap(page.getByRole('link', { name: 'All visits' }));
  await again.tap(page.getByRole('button', { name: 'New visit' }).first());
  await again.tap(page.getByRole('dialog').locator('label').filter({ hasText: 'N. H.' }));
  await again.tap(page.getByRole('button', { name: 'More: Measured growth since then' }));
  await again.tap(page.getByRole('button', { name: 'Start with the reading' }));
  await expectHair(page, 5);
  await again.tap(page.getByRole('button', { name: 'Less: White' }));
  expect(again.taps).toBeLessThanOrEqual(12);
  await expect(page.getByRole('banner')).toContainText('N. H.');
});

test('a new head comes to its plan in at most 20 taps, the same head returning unchanged to its first gram in at most 9', async ({
  page,
  salon,
}) => {
  test.setTimeout(900_000);
  const chip = (words: string) => page.locator('label', { has: page.getByText(words, { exact: true }) });
  const planned = () =>
    expect(page.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({ timeout: 400_000 });
  await open(page, salon);
  const first = new Finger(page);
  const answered = async (finger: Finger) => {
    finger.taps++; // the day of the skin test, from the calendar
    await page.getByLabel('Day of the last skin test').fill(daysAgo(5));
    await finger.tap(page.locator('label', { hasText: 'Read, and clear' }));
    await finger.tap(page.locator('label', { hasText: 'All asked' }));
  };
  await first.tap(page.getByRole('button', { name: 'New visit' }).first());
  first.taps++; // into the label
  await page.getByLabel('Label', { exact: true }).fill('T. N.');
  await answered(first);
  await first.tap(page.getByRole('button', { name: 'Start with the reading' }));
  await first.tap(page.getByRole('button', { name: 'level 6, natural' }));
  await first.tap(page.getByRole('button', { name: '25', exact: true }));
  await first.tap(chip('lengths'));
  await first.tap(page.getByRole('button', { name: 'level 6, natural' }));
  await first.tap(chip('gold'));
  await first.tap(page.getByRole('button', { name: /^Copy .* to all areas$/ }));
  await first.tap(page.getByRole('link', { name: /target/ }));
  await first.tap(page.getByRole('button', { name: 'level 5, natural' }));
  await first.tap(page.getByRole('link', { name: 'To the plan' }));
  await planned();
  expect(first.taps).toBeLessThanOrEqual(20);
  await expect(page.getByRole('banner')).toContainText('· saved');

  // Unchanged, from opening to the first gram: the gate and the agreement are on the way.
  await page.goto(salon.url);
  const again = new Finger(page);
  await again.tap(page.getByRole('button', { name: 'New visit' }).first());
  await again.tap(page.getByRole('dialog').locator('label').filter({ hasText: 'T. N.' }));
  await expect(page.getByRole('checkbox', { name: 'The same target as last time' })).toBeChecked();
  await expect(page.getByLabel('Day of the last skin test')).toHaveValue(daysAgo(5));
  await again.tap(page.locator('label', { hasText: 'All asked' }));
  await again.tap(page.getByRole('button', { name: 'Start with the plan' }));
  await planned();
  await again.tap(page.getByRole('link', { name: /agree/ }));
  again.taps++; // the name, drawn in one go
  await signed(page);
  await again.tap(page.getByRole('button', { name: 'I agree' }));
  await again.tap(page.getByRole('button', { name: 'Hands on: to the bowl' }));
  await again.tap(page.getByRole('button', { name: 'Is in' }));
  await expect(page.getByText(/ booked\./)).toBeVisible();
  expect(again.taps).toBeLessThanOrEqual(9);
});
