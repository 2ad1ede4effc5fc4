import { root } from '../support/server';
import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

const photo = `${root}wire/fuzz/corpus/picture_fuzz/card.jpg`;

// By a card that nobody measured a strand is compared, and no number is given.
test('a strand is read by a photo of it in the printed card', async ({ page, salon }) => {
  await open(page, salon, '#/shelf');
  await page.getByRole('button', { name: 'Copy the demo shelf' }).click();
  await page.getByText('Measured swatches').first().click();
  await page.getByText('By a photo of the printed card').first().click();
  await page.getByLabel('Photo of the card', { exact: true }).setInputFiles(photo);
  await expect(page.getByText(/Nobody measured this card\. Most like patch [A-Z]\d/)).toBeVisible();
  await expect(page.getByText(/L\* \d/)).toHaveCount(0);
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 844 });
  await expectNoSideScroll(page);

  // What is no picture is said to be none.
  await page.getByLabel('Photo of the card', { exact: true }).setInputFiles({
    name: 'notes.txt',
    mimeType: 'text/plain',
    buffer: Buffer.from('no picture'),
  });
  await expect(page.getByText(/JPEG/).first()).toBeVisible();
});
