import { expect, open, test } from '../support/test';

const visit = 'demo-half_white_three_to_seven';
const pages = {
  home: '',
  gate: `#/visits/${visit}/gate`,
  reading: `#/visits/${visit}/assess`,
  target: `#/visits/${visit}/aim`,
  plan: `#/visits/${visit}/plan`,
};

/** Where the focus is: its role, its name, and whether a person sees it there. */
interface Stop {
  role: string;
  name: string;
  seen: boolean;
}

for (const [name, hash] of Object.entries(pages)) {
  test(`every keyboard stop of ${name} has a name and is seen`, async ({ page, salon }, info) => {
    await open(page, salon, hash);
    if (name === 'plan')
      await expect(page.getByRole('button', { name: 'Change grams' }).first()).toBeVisible({
        timeout: 300_000,
      });
    if (name === 'reading' || name === 'target')
      await expect(page.locator('[data-drawn="webgl"], [data-drawn="plain"]').first()).toBeVisible({
        timeout: 120_000,
      });
    const stops: Stop[] = [];
    for (let i = 0; i < 250; i++) {
      await page.keyboard.press('Tab');
      if (await page.evaluate(() => document.activeElement === document.body)) break;
      const focus = page.locator(':focus');
      const [, role = '', told = ''] =
        /^- '?(\w+)(?: "((?:[^"\\]|\\.)*)")?/.exec(await focus.ariaSnapshot()) ?? [];
      const at = await focus.evaluate((on) => {
        // A radio or a box to tick is as large as its label; the rest is what it is.
        const { width, height, top, bottom } = on.getBoundingClientRect();
        return width > 1 && height > 1 && bottom > 0 && top < innerHeight;
      });
      const spoken =
        told || (await focus.evaluate((on) => on.getAttribute('aria-label') ?? on.textContent ?? ''));
      stops.push({ role, name: spoken.trim(), seen: at });
    }
    const list = stops.map((stop, i) => `${i + 1}. ${stop.role} ${stop.name}`).join('\n');
    await info.attach('stops', { body: list, contentType: 'text/plain' });
    expect(stops.length, list).toBeGreaterThan(4);
    expect(stops.length, list).toBeLessThan(250);
    expect(
      stops.filter((stop) => !stop.name),
      list,
    ).toEqual([]);
    expect(
      stops.filter((stop) => !stop.seen),
      list,
    ).toEqual([]);
  });
}
