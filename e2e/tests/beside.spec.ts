import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

// A PNG of one grey pixel, drawn anew as JPEG by the page.
const pixel = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);

test('what happens beside the bowl is noted', async ({ page, salon }) => {
  await open(page, salon, '#/visits/demo-salt_and_pepper_two_tones/beside');
  await page.locator('label', { hasText: 'New gloves, long cuffs' }).click();
  await page.getByRole('button', { name: 'This is done' }).click();
  await expect(page.getByText(/New gloves, long cuffs · not done: Gown/)).toBeVisible();

  const part = (name: string) => page.getByText(name, { exact: true }).click();
  await part('Tests made, and looks');
  await page.getByLabel('Where', { exact: true }).fill('Behind the left ear');
  await page.getByLabel('What showed').fill('nothing to be seen');
  await page.getByLabel('Made by').fill('Leo');
  await page.getByRole('button', { name: 'Note the test' }).click();
  await expect(page.getByText(/skin · Behind the left ear · nothing to be seen · Leo/)).toBeVisible();
  await page.locator('label', { hasText: 'it ran out' }).click();
  await page.getByRole('button', { name: 'Note the look' }).click();
  await expect(page.getByRole('listitem').filter({ hasText: 'it ran out' })).toBeVisible();
  await part('Leave to keep and show');
  await page.getByLabel('Whose leave it is').fill('Ana');
  await page.getByRole('button', { name: 'Agreed: Pictures of the hair may be kept.', exact: true }).click();
  await expect(page.getByText(/✓ agreed: Ana/)).toBeVisible();
  await page.getByRole('button', { name: 'Taken back: Pictures of the hair may be kept.' }).click();
  await expect(page.getByText(/■ not agreed: Ana/)).toBeVisible();
  await part('After the rinse');
  await page.locator('label', { hasText: 'Free of tangles' }).click();
  await page.getByRole('button', { name: 'This is done' }).last().click();
  await expect(page.getByText(/Free of tangles · not done: Water lukewarm/)).toBeVisible();

  await part('Hand over, or brief an assistant');
  await page.getByLabel('To whom').first().fill('Leo');
  await page.getByLabel('What has to happen next').fill('Rinse bowl A at 15:10');
  await page.getByLabel('What was promised').fill('No warm tone');
  await page.getByRole('button', { name: 'Hand over' }).click();
  await expect(page.getByRole('region', { name: 'For Leo' })).toContainText('No warm tone');
  await page.getByLabel('Your name').fill('Leo');
  await page.getByRole('button', { name: 'I have read it and take over' }).click();
  await expect(page.getByRole('region', { name: 'For Leo' })).toContainText('✓ Leo');

  await part('Pictures');
  await expect(page.getByRole('button', { name: 'Take or choose a picture' })).toBeDisabled();
  await page.getByLabel('Who agreed to it being kept').fill('said yes');
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: pixel });
  await expect(page.getByRole('img', { name: 'after, front' })).toBeVisible();

  await part('Refuse, or do something else');
  await page.getByLabel('Another reason').fill('Scalp is sore');
  await page.getByLabel('In these words').fill('Let it heal first');
  await page.getByRole('button', { name: 'Keep the refusal' }).click();
  await expect(page.getByText(/Scalp is sore · “Let it heal first”/)).toBeVisible();

  await part('For home');
  await page.getByLabel('Product', { exact: true }).fill('Mild wash');
  await page.getByLabel('Why this head needs it').fill('Keeps the tone longer');
  await page.getByRole('button', { name: 'Note the advice' }).click();
  await expect(page.getByText(/Mild wash · Keeps the tone longer/)).toBeVisible();

  await part('Payment');
  await expect(page.getByRole('spinbutton', { name: 'Deposit' })).toBeVisible();
  await page.getByRole('spinbutton', { name: 'Price' }).last().focus();
  for (let i = 0; i < 8; i++) await page.keyboard.press('PageUp');
  await expect(page.getByText(/To pay: €80/)).toBeVisible();
  await page.getByRole('button', { name: 'Note the payment' }).click();
  await expect(page.getByText(/Colour visit €80.00 · cash €80.00/)).toBeVisible();
  await expectAccessible(page);
  await page.setViewportSize({ width: 320, height: 700 });
  await expectNoSideScroll(page);
});
