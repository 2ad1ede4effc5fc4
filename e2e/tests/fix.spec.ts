import { expect, open, test } from '../support/test';

interface Saved {
  id: string;
  seq: number;
  person: string;
  document: {
    date?: string;
    head: {
      areas: { id: string; spans: { id: string; services?: { kind: string; weeks_ago?: number }[] }[] }[];
    };
  };
}

test('what was done today counts in a visit that puts it right', async ({ page, salon }) => {
  await open(page, salon);
  const api = `${salon.url}api/v1`;
  const today = await page.evaluate(() => new Intl.DateTimeFormat('en-CA').format(new Date()));
  const { document } = (await (await page.request.get(`${api}/visits/demo-all_over_brown`)).json()) as Saved;
  const made = await page.request.post(`${api}/visits?entry=visit-of-a-device-1`, {
    data: { ...document, date: today, bowls: [] },
  });
  const { id, seq } = (await made.json()) as Saved;
  const { head } = document;
  const zone = `${head.areas[0]!.id}/${head.areas[0]!.spans[0]!.id}`;
  const shelf = (await (await page.request.get(`${api}/shelf`)).json()) as {
    products: { id: string; cls: string; range: string }[];
  };
  const tint = shelf.products.find(({ cls }) => cls === 'permanent')!;
  const bowl = { label: 'A', range: tint.range, minutes: 30, zones: [zone] };
  const facts = [
    { id: 'mixed-of-a-device-1', kind: 'mixed', body: { ...bowl, parts: [{ product: tint.id, grams: 20 }] } },
    { id: 'result-of-a-device-1', kind: 'result', body: { zones: [], after: head } },
  ];
  const handed = await page.request.post(`${api}/visits/${id}/hand-in`, {
    data: { seq, entry: 'hand-in-of-a-device-1', facts },
  });
  expect(handed.status(), await handed.text()).toBe(200);
  await page.goto(`${salon.url}#/clients/${((await handed.json()) as Saved).person}`);
  await page.getByRole('button', { name: 'New visit' }).click();
  await page.locator('label', { hasText: 'This puts the last visit right' }).click();
  await expect(page.getByText(/what was done then counts too/)).toBeVisible();
  await page.getByRole('button', { name: /^Start with the/ }).click();
  await page.waitForURL(/#\/visits\//);
  const next = /visits\/([^/]+)/.exec(page.url())![1]!;
  const begun = (await (await page.request.get(`${api}/visits/${next}`)).json()) as Saved;
  const services = begun.document.head.areas.flatMap((area) =>
    area.spans.flatMap((span) => span.services ?? []),
  );
  expect(services).toContainEqual({ kind: 'coloured', layers: 1, weeks_ago: 0 });
});
