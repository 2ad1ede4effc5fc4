import { expect, expectAccessible, open, test } from '../support/test';

const wordsOf = (language: string) => new RegExp(`/assets/${language}-[^/]*\\.js$`);

test('a language comes when it is wished, and only that one', async ({ page, salon, watch }) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  const languagesAsked = () => asked.filter((url) => /\/assets\/(en|de|fr|es)-[^/]*\.js$/.test(url));
  await open(page, salon, '#/');
  await page.getByRole('button', { name: 'Settings' }).click();
  expect(languagesAsked().map((url) => url.match(/\/(..)-[^/]*$/)?.[1])).toEqual(['en']);

  watch.allow.push(/net::ERR_FAILED/);
  await page.route(wordsOf('de'), (route) => route.abort());
  await page.getByRole('radio', { name: 'Deutsch' }).click();
  await expect(page.getByRole('alert')).toContainText('could not be fetched');
  await expect(page.getByRole('dialog', { name: 'Settings' })).toBeVisible();
  await expectAccessible(page);

  await page.getByRole('radio', { name: 'Français' }).click();
  await expect(page.getByRole('dialog', { name: 'Réglages' })).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('lang', 'fr');
  await expect(page.getByRole('alert')).toBeHidden();
});
