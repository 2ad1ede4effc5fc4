import { asked } from '../support/asked';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// A salon's own shelf, typed from a paper list: sixty shades by ticking, another maker's range by pasting, and the first plan.
test('two ranges are typed in a handful of taps, and the plan names nothing else', async ({
  page,
  salon,
}) => {
  await open(page, salon);
  await page.getByRole('link', { name: 'Shelf', exact: true }).click();
  await page.getByRole('button', { name: 'New shelf' }).click();
  await page.getByLabel('Name of the shelf').fill('Our shelf');
  await page.getByRole('button', { name: 'Create it' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Our shelf' })).toBeVisible();
  await expectAccessible(page);

  // The class brings ratios, strengths and times as they are common, and its bottles.
  await page.getByRole('button', { name: 'Add a range' }).click();
  await page.getByRole('textbox', { name: 'Maker' }).fill('Maker one (invented)');
  await page.getByRole('textbox', { name: 'Range' }).fill('Tint one');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByRole('button', { name: 'Tick shades' }).click();
  for (const tone of ['natural', 'ash', 'gold', 'copper', 'red', 'beige'])
    await page.getByRole('button', { name: `All ${tone}` }).click();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Add: 60' }).click();
  const shades = page.getByRole('list', { name: 'Shades' });
  await expect(shades.getByRole('listitem').filter({ hasText: '7 copper' })).toBeVisible();

  // The other maker's by a pasted list; what is not understood is told, and nothing is kept before it is said.
  await page.getByRole('button', { name: 'Add a range' }).click();
  await page.getByRole('textbox', { name: 'Maker' }).fill('Maker two (invented)');
  await page.getByRole('textbox', { name: 'Range' }).fill('Soft two');
  await page.getByRole('radio', { name: 'demi colour' }).check();
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.getByRole('button', { name: 'Paste a list' }).click();
  const lines = [4, 5, 6, 7, 8, 9].flatMap((level) =>
    ['natural', 'ash', 'gold'].map((tone) => `S${level}${tone[0]};${level} ${tone};"9,50"`),
  );
  await page
    .getByLabel('The list', { exact: true })
    .fill(['code;shade;price', ...lines, 'X1;moonlight;9'].join('\n'));
  await page.getByLabel('Grams of a package').fill('60');
  await expect(page.getByRole('status').filter({ hasText: 'not understood: 1' })).toContainText(
    'Understood: 18',
  );
  await expect(page.getByText('No tone in “X1;moonlight;9”', { exact: false })).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Keep what was understood: 18' }).click();
  // The line that was not understood stays, and is put right.
  const list = page.getByLabel('The list', { exact: true });
  await expect(list).toHaveValue('code;shade;price\nX1;moonlight;9');
  await list.fill('code;shade;price\nX1;9 violet;9');
  await page.getByRole('button', { name: 'Keep what was understood: 1', exact: true }).click();
  await page.getByLabel('Search by code').fill('s7');
  await expect(shades.getByRole('listitem')).toHaveCount(3);
  await page.getByLabel('Search by code').fill('');

  // A tube that is empty is out by one tap, and back by undo.
  const tube = page.getByRole('button', { name: 'S7g · 7 gold: Empty' });
  await tube.click();
  await expect(tube).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(tube).toHaveAttribute('aria-pressed', 'false');
  await expectAccessible(page);
  for (const [width, height] of [
    [390, 844],
    [1180, 820],
  ] as const) {
    await page.setViewportSize({ width, height });
    await expectNoSideScroll(page);
  }

  // The first shelf of its own is the one in use.
  await page.getByRole('link', { name: 'shelves' }).click();
  await expect(page.getByRole('listitem').filter({ hasText: 'Our shelf' })).toContainText('In use');
  await open(page, salon);
  await expect(page.getByText('Our shelf')).toBeVisible();
  await page.getByRole('button', { name: 'New visit' }).first().click();
  await page.getByLabel('Label', { exact: true }).fill('Q. R.');
  await asked(page);
  await page.getByRole('button', { name: 'Start with the reading' }).click();
  await page.getByRole('link', { name: /target/ }).click();
  await page.getByRole('button', { name: 'level 6, gold' }).click();
  await page.getByRole('link', { name: 'To the plan' }).click();
  const bowls = page.getByRole('complementary', { name: 'Bowls' });
  await expect(bowls.getByText(/\d+\.\d g/).first()).toBeVisible({ timeout: 300_000 });
  await expect(bowls.getByText(/Tint one|Soft two/).first()).toBeVisible();
  await expect(bowls.getByText('demo', { exact: false })).toHaveCount(0);
});
