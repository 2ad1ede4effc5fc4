import { expect, expectAccessible, expectNoSideScroll, open, test } from '../support/test';

interface Saved {
  id: string;
  seq: number;
  person: string;
  document: Record<string, unknown>;
}

test('a plan tells what results changed in it, and results can be taken out', async ({ page, salon }) => {
  await open(page, salon);
  const api = `${salon.url}api/v1`;
  const demo = (await (
    await page.request.get(`${api}/visits/demo-salt_and_pepper_two_tones`)
  ).json()) as Saved;
  const zone = 'top/roots';
  const document = {
    ...demo.document,
    client: 'Ana of the results',
    head: { areas: [{ id: 'top', scalp: 'calm', spans: [{ id: 'roots', to_cm: 2, level: 5 }] }] },
    aims: [{ zone: '*', level: 6 }],
    bowls: [
      {
        ...{ label: 'A', zones: [zone], range: 'permanent', minutes: 35 },
        parts: [
          { product: 'permanent-6-natural', grams: 30 },
          { product: 'developer-6', grams: 30 },
        ],
      },
    ],
  };
  let person = '';
  const visit = async (nth: number) => {
    const made = await page.request.post(`${api}/visits?entry=visit-of-results-${nth}`, { data: document });
    expect(made.status(), await made.text()).toBe(201);
    return (await made.json()) as Saved;
  };
  for (let nth = 1; nth <= 4; ++nth) {
    const { id, seq } = await visit(nth);
    const body = { zones: [{ zone, level: 4.5, tone: 'natural' }] };
    const facts = [{ id: `result-of-results-${nth}`, kind: 'result', body }];
    const handed = await page.request.post(`${api}/visits/${id}/hand-in`, {
      data: { seq, entry: `hand-in-of-results-${nth}`, ...(person ? { person } : {}), facts },
    });
    expect(handed.status(), await handed.text()).toBe(200);
    person = ((await handed.json()) as Saved).person;
  }
  const { id } = await visit(5);
  const told = page.locator('section.notice', { hasText: 'Results changed this plan' });
  await page.goto(`${salon.url}#/visits/${id}/plan`);
  await expect(told).toBeVisible({ timeout: 120_000 });
  await expect(told).toContainText(/level [\d.]+ without results, [\d.]+ with them/);
  await page.setViewportSize({ width: 320, height: 800 });
  await expectNoSideScroll(page);
  await page.setViewportSize({ width: 1180, height: 820 });
  await expectAccessible(page);

  // Undone: learned anew without them, and the plan is as it would have been.
  await told.getByRole('link', { name: 'Look, or take a result out' }).click();
  const out = page.getByRole('button', { name: 'Take out', exact: true });
  await expect(out).toHaveCount(4);
  for (let left = 3; left >= 0; --left) {
    await out.first().click();
    await expect(out).toHaveCount(left);
  }
  await page.goto(`${salon.url}#/visits/${id}/plan`);
  await page.reload();
  await expect(page.getByRole('complementary').getByRole('heading', { level: 2 }).first()).toBeVisible({
    timeout: 120_000,
  });
  await expect(told).toHaveCount(0);
});
