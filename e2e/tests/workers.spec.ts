import { expect, expectHair, open, test } from '../support/test';

const hash = '#/visits/demo-salt_and_pepper_two_tones/assess';

test('workers draw, ask and store', async ({ page, salon }) => {
  await open(page, salon, hash);
  await expectHair(page, 5);
  await expect(page.locator('[data-drawn="webgl"]')).toHaveCount(5);
  const names = page.workers().map((worker) => new URL(worker.url()).pathname);
  for (const name of ['hair-worker', 'back-worker'])
    expect(names.some((path) => path.includes(name))).toBe(true);
});

test('without workers the page does it all itself', async ({ page, salon }) => {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'Worker'));
  await open(page, salon, hash);
  await expectHair(page, 5);
  expect(page.workers()).toEqual([]);
  await page.getByRole('button', { name: 'More: White', exact: true }).click();
  await expect(page.getByRole('banner')).toContainText('· saved');
});

test('a worker that cannot start leaves its work to the page', async ({ page, salon, watch }) => {
  watch.allow.push(/Failed to load resource|ERR_FAILED/);
  await page.route(/(hair|back)-worker/, (route) => route.abort());
  await open(page, salon, hash);
  await expectHair(page, 5);
});

test('a value that is held is answered on the way, and at last with its end', async ({ page, salon }) => {
  await open(page, salon, hash);
  await expectHair(page, 5);
  const asked: number[] = [];
  let under = 0;
  let most = 0;
  page.on('request', (request) => {
    if (!request.url().endsWith('/assess')) return;
    most = Math.max(most, ++under);
    asked.push(
      request.postDataJSON().head.areas[0].spans[0].white_percent.value ??
        request.postDataJSON().head.areas[0].spans[0].white_percent,
    );
  });
  page.on('requestfinished', (request) => void (request.url().endsWith('/assess') && under--));
  const white = page.getByRole('spinbutton', { name: 'White' });
  await page.getByRole('button', { name: 'More: White', exact: true }).hover();
  await page.mouse.down();
  await expect(white).toHaveAttribute('aria-valuenow', '100');
  await page.mouse.up();
  await expect.poll(() => asked.at(-1)).toBe(100);
  expect(most, 'requests under way at once').toBe(1);
  expect(asked.length).toBeGreaterThan(1);
});

test('a changed reading draws its own strip and no other', async ({ page, salon }) => {
  await page.addInitScript(() => {
    const drawn: number[] = [];
    Object.assign(window, { drawn });
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: []) {
      // Orders of drawings are a list, written as JSON.
      if (typeof message === 'string' && message.startsWith('[')) drawn.push(JSON.parse(message).length);
      return post.call(this, message, ...rest);
    };
  });
  await open(page, salon, hash);
  await expectHair(page, 5);
  // The page is at rest: what was read first has been drawn and stored.
  await page.waitForLoadState('networkidle');
  const drawings = () => page.evaluate(() => (window as unknown as { drawn: number[] }).drawn);
  const before = (await drawings()).length;
  const strip = page.getByRole('img', { name: /^Hair from scalp to tip/ }).first();
  const said = await strip.getAttribute('aria-label');
  await page.getByRole('button', { name: 'Less: White', exact: true }).click();
  await expect(strip).not.toHaveAttribute('aria-label', said ?? '');
  await expect(page.getByRole('banner')).toContainText('· saved');
  expect((await drawings()).slice(before)).toEqual([1]);
});
