import { places, settled, type PlaceName } from '../support/places';
import { expect, open, test } from '../support/test';

/** Where the focus is: its role, its name, and whether a person sees it there. */
interface Stop {
  role: string;
  name: string;
  seen: boolean;
}

for (const [name, hash] of Object.entries(places) as [PlaceName, string][]) {
  if (name === 'kit') continue; // every part in every state: not a page of the work
  test(`every keyboard stop of ${name} has a name and is seen`, async ({ page, salon }, info) => {
    await open(page, salon, hash);
    await settled(page, name);
    const stops: Stop[] = [];
    for (let i = 0; i < 250; i++) {
      await page.keyboard.press('Tab');
      const stop = await page.evaluate(() => {
        const on = document.activeElement;
        if (!on || on === document.body) return undefined;
        const by = on.getAttribute('aria-labelledby');
        const named =
          (by && document.getElementById(by)?.textContent) ||
          on.getAttribute('aria-label') ||
          (on as HTMLInputElement).labels?.[0]?.textContent ||
          on.textContent ||
          '';
        const { width, height, top, bottom } = on.getBoundingClientRect();
        const seen = width > 1 && height > 1 && bottom > 0 && top < innerHeight;
        return { role: on.getAttribute('role') ?? on.tagName.toLowerCase(), name: named.trim(), seen };
      });
      if (!stop) break;
      stops.push(stop);
    }
    const list = stops.map((stop, i) => `${i + 1}. ${stop.role} ${stop.name}`).join('\n');
    await info.attach('stops', { body: list, contentType: 'text/plain' });
    expect(stops.length, list).toBeGreaterThan(1);
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
