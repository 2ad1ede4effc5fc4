import { open, test, expectHair } from '../support/test';
test('profile', async ({ browser, page, salon }) => {
  await open(page, salon, `#/visits/demo-regrowth_white_hairline/assess`);
  await expectHair(page, await page.locator('[data-drawn]').count());
  const box = (await page.getByRole('button', { name: 'More: White', exact: true }).boundingBox())!;
  await page.mouse.move(box.x + 20, box.y + 20);
  await page.mouse.down(); await page.waitForTimeout(2500); await page.mouse.up();
  await page.waitForTimeout(1000);
  const box2 = (await page.getByRole('button', { name: 'Less: White', exact: true }).boundingBox())!;
  const rate = Number(process.env.RATE ?? 1);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate });
  await browser.startTracing(page, { categories: ['devtools.timeline', 'devtools.timeline.frame', 'disabled-by-default-devtools.timeline','v8'] });
  await page.mouse.move(box2.x + 20, box2.y + 20);
  await page.mouse.down(); await page.waitForTimeout(2500); await page.mouse.up();
  const t = JSON.parse((await browser.stopTracing()).toString()).traceEvents;
  const main = t.find((e: any) => e.name === 'Commit');
  const mine = t.filter((e: any) => e.pid === main.pid && e.tid === main.tid && e.ph === 'X' && e.name !== 'RunTask').sort((a: any, b: any) => a.ts - b.ts || b.dur - a.dur);
  let end = -1; const sum: any = {};
  for (const e of mine) { if (e.ts < end) continue; end = e.ts + (e.dur ?? 0); const s = (sum[e.name + ' ' + (e.args?.data?.type ?? '')] ??= { n: 0, cpu: 0, wall: 0, max: 0 }); s.n++; s.cpu += (e.tdur ?? 0) / 1000; s.wall += (e.dur ?? 0) / 1000; s.max = Math.max(s.max, (e.tdur ?? 0) / 1000); }
  console.log(Object.entries(sum).sort((a: any, b: any) => b[1].cpu - a[1].cpu).slice(0, 16).map(([k, v]: any) => `${k} n=${v.n} cpu=${v.cpu.toFixed(1)} wall=${v.wall.toFixed(1)} max=${v.max.toFixed(1)}`).join('\n'));
  console.log('commits', t.filter((e: any) => e.name === 'Commit').length, 'FireAnimationFrame', t.filter((e: any) => e.name === 'FireAnimationFrame').map((e: any) => (e.tdur / 1000).toFixed(1)).join(' '));
});
