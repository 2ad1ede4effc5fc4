import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const id = 'demo-half_white_three_to_seven';

// What the visit can hold can be told on screen, and nothing is told by looking.
test('the rarer questions are answered one by one, and looking answers none', async ({ page, salon }) => {
  await open(page, salon, `#/visits/${id}/gate`);
  const stored = async () =>
    (await (await page.request.get(`${salon.url}api/v1/visits/${id}`)).json()).document;
  const before = await stored();
  await page.getByText('More to ask').click();
  await page.getByText('Washing and sun').click();
  await expect(page.getByRole('group', { name: 'Asthma?' })).toBeVisible();
  await expectAccessible(page);
  expect(await stored()).toEqual(before);

  const choose = (group: string, words: string | RegExp) =>
    page.getByRole('group', { name: group }).locator('label').filter({ hasText: words }).click();
  await choose('Asthma?', 'yes');
  await choose('Allergic to textile dyes, rubber or local anaesthetics?', /^\s*no\s*$/);
  await choose('Any medicine?', 'thins the skin');
  await page.locator('label', { hasText: 'Pregnant or breast-feeding' }).click();
  await page.getByRole('button', { name: 'Add what happened' }).click();
  await choose('What happened', 'burn');
  await page.getByRole('button', { name: 'More: Washes a week' }).click();
  // "Saved" may still be of the change before.
  await expect.poll(stored).toMatchObject({
    answers: {
      asthma: 'yes',
      related_allergy: 'no',
      medicine: 'skin_thinning',
      pregnancy_week: 0,
      incidents: [{ kind: 'burn' }],
    },
    options: { habit: { washes_per_week: 3.5 } },
  });
  await page.setViewportSize({ width: 390, height: 844 });
  await expectNoSideScroll(page);
});

test('a strand test, thinning and an earlier cover are told where the hair is read', async ({
  page,
  salon,
}) => {
  await open(page, salon, `#/visits/${id}/assess`);
  const stored = async () =>
    (await (await page.request.get(`${salon.url}api/v1/visits/${id}`)).json()).document.head.areas[0];
  const choose = (group: string, words: string | RegExp) =>
    page.getByRole('group', { name: group }).locator('label').filter({ hasText: words }).click();
  await page.getByText('History and condition').click();
  await page.locator('label', { hasText: 'A strand was tried' }).click();
  await choose('How it stood it', 'weaker');
  await page.getByRole('button', { name: 'More: Level reached' }).click();
  await choose('White took colour last time', 'badly');
  await page.getByText('This area', { exact: true }).click();
  await choose('Does hair fall or thin here?', 'thinning');
  await expectAccessible(page);
  await expect.poll(stored).toMatchObject({
    loss: 'thinning',
    spans: [{ strand: { condition: 'weak', level: 3.5 }, earlier_cover: 'badly' }],
  });
});
