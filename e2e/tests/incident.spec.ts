import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const id = 'demo-toner_on_lightened';

test('a record of an incident answers nothing by itself, and is gone on with', async ({ page, salon }) => {
  await open(page, salon, `#/visits/${id}/incident`);
  const keep = page.getByRole('button', { name: 'Keep the record' });
  const unanswered = page.getByText('Something still has to be written here.');
  await expect(page.getByRole('radio', { checked: true, name: /sting|^no$/ })).toHaveCount(0);
  await keep.click();
  await expect(unanswered).toHaveCount(5);
  await expectAccessible(page);

  const tick = (group: string, words: string) =>
    page.getByRole('group', { name: group, exact: true }).locator('label', { hasText: words }).click();
  await tick('What was it?', 'stinging');
  await tick('Led to', 'none of these');
  await tick('Only where the product was put on', 'yes');
  await page.getByRole('textbox', { name: 'Product, full name' }).fill('Clear toner, invented');
  await page.getByLabel('Signs').fill('Red and warm behind the ear');
  await expect(unanswered).toHaveCount(0);
  await keep.click();
  await expect(page.getByText(/^✓ Kept /)).toBeVisible();
  await page.reload();
  await expect(page.getByLabel('Signs')).toHaveValue('Red and warm behind the ear');
  const { facts } = await (await page.request.get(`${salon.url}api/v1/visits/${id}/facts`)).json();
  expect(facts.filter((one: { kind: string }) => one.kind === 'incident')).toHaveLength(1);
  await page.setViewportSize({ width: 320, height: 844 });
  await expectNoSideScroll(page);
});
