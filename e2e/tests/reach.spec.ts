import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const hash = '#/visits/demo-salt_and_pepper_two_tones/aim';

test('a cell out of reach says so and what is nearest; one within reach does not', async ({
  page,
  salon,
}) => {
  await open(page, salon, hash);
  const map = page.getByRole('grid');
  await expect(map).toHaveAttribute('aria-busy', 'false');
  // Nearly black hair with colour on it does not become pale blonde in one go.
  const pale = map.getByRole('button', { name: 'level 10, ash' });
  await expect(pale).toHaveAccessibleName('level 10, ash: not in one step');
  await pale.click();
  await expect(page.getByText('Not in one step today: level 10, ash')).toBeVisible();
  await expect(page.getByText(/^nearest today: level [1-7], /)).toBeVisible();
  await expect(page.getByText(/not a promise/)).toBeVisible();
  await expect(page.getByText(/more lift than this shelf gives|Colour does not lift colour/)).toBeVisible();

  const brown = map.getByRole('button', { name: 'level 5, natural', exact: true });
  await brown.click();
  await expect(brown).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('within reach today').first()).toBeVisible();
  await expect(page.getByText(/Not in one step today: /)).toBeHidden();
});

test('a shade and a picked colour are told what is near in the same words', async ({ page, salon }) => {
  await open(page, salon, hash);
  await expect(page.getByRole('grid')).toHaveAttribute('aria-busy', 'false');
  const nearest = page.getByText(/^nearest today: level [1-7]/);
  const reason = page.getByText(/more lift than this shelf gives|Colour does not lift colour/);

  await page.getByRole('radio', { name: 'shade', exact: true }).check();
  await page.getByRole('searchbox', { name: 'Find a shade' }).fill('10');
  const pale = page.getByRole('list', { name: 'shade' }).getByRole('button').first();
  const name = (await pale.locator('.words').first().innerText()).trim();
  await pale.click();
  await expect(page.getByText(`Not in one step today: ${name}`)).toBeVisible();
  await expect(nearest).toBeVisible();
  await expect(page.getByText(/^Read from the map at level \d+/)).toBeVisible();
  await expect(reason).toBeVisible();

  await page.getByRole('radio', { name: 'picture', exact: true }).check();
  const picture = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(64, 64);
    const pen = canvas.getContext('2d')!;
    pen.fillStyle = '#e8d8a8';
    pen.fillRect(0, 0, 64, 64);
    return [...new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer())];
  });
  const file = { name: 'pale.png', mimeType: 'image/png', buffer: Buffer.from(picture) };
  await page.locator('input[type=file]').setInputFiles(file);
  await page.getByRole('button', { name: 'Picture: pick a colour' }).click();
  await expect(page.getByText(/Not in one step today: picked from the picture/)).toBeVisible();
  await expect(nearest).toBeVisible();
  await expect(reason).toBeVisible();
});

test('the colours in reach are drawn, and told in words that follow the wish', async ({ page, salon }) => {
  await open(page, salon, hash);
  await expect(page.getByRole('grid')).toHaveAttribute('aria-busy', 'false');
  await page.getByText('Outline of what is within reach').click(); // words suffice until it is asked for
  const drawing = page.getByRole('img', { name: /^Colours within reach today on / });
  await page.getByRole('grid').getByRole('button', { name: 'level 10, ash' }).click();
  await expect(drawing).toHaveAccessibleName(
    /The target is out of reach\. The nearest is \d(\.\d)? levels darker/,
  );
  await expect(drawing).toHaveAccessibleName(/from level [\d½]+ to level [\d½]+/);
  const wish = drawing.locator('g.wish').first();
  const before = await wish.getAttribute('transform');
  await page.getByRole('grid').getByRole('button', { name: 'level 5, natural', exact: true }).click();
  await expect(drawing).toHaveAccessibleName(/The target is within reach\.$/);
  await expect(drawing.locator('g.nearest')).toHaveCount(0);
  await expect(wish).not.toHaveAttribute('transform', before!);
  await expect(drawing).toBeInViewport({ ratio: 0.99 });
});

test('a tablet shows every level and every choice of a wish without scrolling', async ({ page, salon }) => {
  await page.setViewportSize({ width: 1180, height: 820 });
  await open(page, salon, hash);
  await page.getByRole('grid').getByRole('button', { name: 'level 5, gold' }).click();
  const seen = [
    ...(await page.getByRole('grid').getByRole('button').all()),
    ...(await page.getByRole('complementary').getByRole('radio').all()),
    page.getByRole('button', { name: 'Leave as it is' }),
    page.getByRole('spinbutton', { name: 'Level' }),
    page.getByRole('link', { name: 'To the plan' }),
  ];
  expect(seen.length).toBeGreaterThan(90);
  for (const one of seen) await expect(one).toBeInViewport({ ratio: 0.99 });
});

test('the map is one stop for the Tab key and arrows move in it', async ({ page, salon }) => {
  await open(page, salon, hash);
  const map = page.getByRole('grid');
  await map.getByRole('button', { name: 'level 5, gold' }).click();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowRight');
  await expect(map.getByRole('button', { name: 'level 4, copper' })).toBeFocused();
  await page.keyboard.press('Home');
  await expect(map.getByRole('button', { name: 'level 4, violet' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(map.getByRole('button', { name: 'level 4, violet' })).toHaveAttribute('aria-pressed', 'true');
  await expect(map.locator('button[tabindex="0"]')).toHaveCount(1);
  await page.keyboard.press('Tab');
  await expect(map.locator('button:focus')).toHaveCount(0);
});

test('fewer zones reach more, never less', async ({ page, salon }) => {
  await open(page, salon, hash);
  const map = page.getByRole('grid');
  await expect(map).toHaveAttribute('aria-busy', 'false');
  const out = map.getByRole('button', { name: /not in one step/ });
  const whole = await out.count();
  expect(whole).toBeGreaterThan(0);
  await page.getByRole('radio', { name: 'crown' }).check();
  await page.getByRole('radio', { name: 'regrowth' }).check();
  expect(await out.count()).toBeLessThanOrEqual(whole);
});

test('words from the house offer what is within reach first', async ({ page, salon }) => {
  await open(page, salon, hash);
  await expect(page.getByRole('grid')).toHaveAttribute('aria-busy', 'false');
  await page.getByRole('radio', { name: 'words', exact: true }).check();
  const list = page.getByRole('list', { name: 'words' }).getByRole('button');
  const out = await list.evaluateAll((all) =>
    all.map((one) => one.textContent?.includes('not in one step') ?? false),
  );
  expect(out.length).toBeGreaterThan(0);
  expect(out).toEqual([...out].sort((a, b) => Number(a) - Number(b)));
});

test('without the server the map still takes a wish and says what is missing', async ({
  page,
  salon,
  watch,
}) => {
  watch.allow.push(/ERR_FAILED|Failed to load resource/);
  let gone = true;
  await page.route('**/api/v1/reach', (route) => (gone ? route.abort() : route.continue()));
  await open(page, salon, hash);
  await expect(page.getByText('What is within reach could not be worked out')).toBeVisible();
  const gold = page.getByRole('grid').getByRole('button', { name: 'level 5, gold' });
  await gold.click();
  await expect(gold).toHaveAttribute('aria-pressed', 'true');
  gone = false; // asked again by itself once the server speaks
  await expect(page.getByText('What is within reach could not be worked out')).toBeHidden();
  await expect(page.getByRole('grid')).toHaveAttribute('aria-busy', 'false');
});

for (const scheme of ['light', 'dark'] as const) {
  test(`the map with a wish out of reach is accessible in ${scheme}`, async ({ page, salon }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await open(page, salon, hash);
    await page.getByRole('grid').getByRole('button', { name: 'level 10, ash' }).click();
    await expect(page.getByText('Not in one step today: level 10, ash')).toBeVisible();
    await expectAccessible(page);
    await page.setViewportSize({ width: 320, height: 844 });
    await expectNoSideScroll(page);
  });
}

test.describe('in French', () => {
  test.use({ locale: 'fr-FR' });
  test('the map speaks French', async ({ page, salon }) => {
    await open(page, salon, hash);
    const pale = page.getByRole('grid').getByRole('button', { name: 'hauteur 10, cendré' });
    await expect(pale).toHaveAccessibleName(/pas en une fois aujourd’hui/);
    await pale.click();
    await expect(page.getByText(/Pas en une fois aujourd’hui\s:\s/)).toBeVisible();
    await expect(page.getByText(/rien n’est promis/)).toBeVisible();
    await expectAccessible(page);
  });
});
