// @vitest-environment node
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { expectedMean, type Linear } from './colour';
import type { Ask, Read } from './browser-probe';
import { pop } from './demo-data';
import type { HairTexture, Population, StrandPicture } from './types';

/** Reads pixels of the drawn hair in a real browser: the picture must not lie about colour. */

// The browser driver is a dependency of the end-to-end tests.
const { chromium } = createRequire(new URL('../../../e2e/package.json', import.meta.url))('playwright-core');

const ARGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

const BLANK =
  '<!doctype html><title>b</title><script type="module">import * as strand from "/src/strand/browser-probe.ts"; globalThis.strand = strand;</script>';

declare const strand: typeof import('./browser-probe');

let server: ViteDevServer;
let browser: { newPage(): Promise<unknown>; close(): Promise<void> };
let page: {
  goto(url: string): Promise<unknown>;
  route(url: string, handle: (r: { fulfill(o: object): Promise<void> }) => void): Promise<void>;
  waitForFunction(fn: () => boolean): Promise<unknown>;
  evaluate<A, R>(fn: (arg: A) => R | Promise<R>, arg: A): Promise<R>;
};

beforeAll(async () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  server = await createServer({ root, logLevel: 'error', server: { port: 0, hmr: false, watch: null } });
  await server.listen();
  const url = server.resolvedUrls?.local[0];
  if (!url) throw new Error('the development server has no address');
  browser = await chromium.launch({ executablePath: '/usr/bin/chromium', headless: true, args: ARGS });
  page = (await browser.newPage()) as typeof page;
  await page.route('**/blank', (r) => void r.fulfill({ contentType: 'text/html', body: BLANK }));
  await page.goto(`${url}blank`);
  await page.waitForFunction(() => 'strand' in globalThis);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const read = (ask: Ask): Promise<Read> => page.evaluate((a) => strand.readHair(a), ask);

const TEXTURES: HairTexture[] = ['straight', 'wavy', 'curly', 'coily'];
const MIXES: Record<string, Population[]> = {
  'half white': [pop('white', 0.5, 'white'), pop('black', 0.5, 'black')],
  'few white': [pop('white', 0.12, 'white'), pop('brown', 0.88, 'brown')],
  packets: [pop('lights', 0.3, 'blonde', { widthMm: 3, everyMm: 9 }), pop('brown', 0.7, 'brown')],
  'very dark': [pop('black', 1, 'black')],
  'all white': [pop('white', 1, 'white')],
};

const whole = (texture: HairTexture, today: Population[], planned: Population[] = []): StrandPicture => ({
  lengthCm: 20,
  hair: { texture, diameterUm: 70 },
  spans: [{ id: 'all', label: 'all', fromCm: 0, toCm: 20, today, planned }],
});

function expectMean(found: Linear, wanted: Linear, relative: number): void {
  for (const k of [0, 1, 2] as const) {
    const off = Math.abs(found[k] - wanted[k]);
    expect(off, `channel ${k}: drawn ${found[k].toFixed(4)}, asked ${wanted[k].toFixed(4)}`).toBeLessThan(
      relative * wanted[k] + 0.0015,
    );
  }
}

describe('the drawn hair has the colour it was given', () => {
  for (const texture of TEXTURES) {
    for (const [name, list] of Object.entries(MIXES)) {
      it(`${texture}, ${name}`, async () => {
        for (const [seed, dpr, pxPerCm] of [
          [1, 1, 20],
          [77, 2, 12],
          [5, 1, 9],
        ] as const) {
          const ask: Ask = {
            picture: whole(texture, list),
            seed,
            dpr,
            pxPerCm,
            sheen: 0,
            fromCm: 0,
            toCm: 18,
            half: 'today',
          };
          const { mean, points } = await read(ask);
          expect(points).toBeGreaterThan(3000);
          expectMean(mean, expectedMean(list), 0.06);
        }
      });
    }
  }

  it('leaves a good part of the hair free of highlight, in its own colour', async () => {
    for (const texture of TEXTURES) {
      const list = MIXES['few white'] as Population[];
      const ask: Ask = {
        picture: whole(texture, list),
        seed: 3,
        dpr: 1,
        pxPerCm: 20,
        sheen: 1,
        fromCm: 0,
        toCm: 18,
        half: 'today',
      };
      const { calm, calmShare, mean } = await read(ask);
      expect(calmShare, texture).toBeGreaterThan(0.25);
      expectMean(calm, expectedMean(list), 0.15);
      expect(mean[1], 'the highlight only adds light').toBeGreaterThan(calm[1]);
    }
  });

  it('keeps each span and each half to its own colours, up to the join', async () => {
    const [grown, old] = [MIXES['half white'] as Population[], MIXES['packets'] as Population[]];
    const bed = { today: [0.3, 0.27, 0.25] as const };
    const picture: StrandPicture = {
      lengthCm: 20,
      hair: { texture: 'straight', diameterUm: 70 },
      spans: [
        { id: 'a', label: 'a', fromCm: 0, toCm: 4, today: grown, planned: old, mixedBed: bed },
        { id: 'b', label: 'b', fromCm: 4, toCm: 20, today: old, planned: [pop('copper', 1, 'copper')] },
      ],
    };
    const ask = { picture, seed: 9, dpr: 2, pxPerCm: 20, sheen: 0 };
    const at = async (fromCm: number, toCm: number, half: 'today' | 'planned') =>
      (await read({ ...ask, fromCm, toCm, half })).mean;
    expectMean(await at(0, 3.7, 'today'), expectedMean(grown, bed.today), 0.06);
    expectMean(await at(0, 3.7, 'planned'), expectedMean(old), 0.06);
    expectMean(await at(4.3, 18, 'today'), expectedMean(old), 0.06);
    expectMean(await at(4.3, 18, 'planned'), expectedMean([pop('copper', 1, 'copper')]), 0.06);
  });

  it('comes near it with plain strokes too', async () => {
    for (const texture of TEXTURES) {
      const list = MIXES['packets'] as Population[];
      const ask: Ask = {
        picture: whole(texture, list),
        seed: 3,
        dpr: 1,
        pxPerCm: 20,
        sheen: 0,
        plain: true,
        fromCm: 0,
        toCm: 18,
        half: 'today',
      };
      expectMean((await read(ask)).mean, expectedMean(list), 0.25);
    }
  });
});

describe('drawing', () => {
  it('is the same for the same seed and another for another', async () => {
    const ask: Ask = {
      picture: whole('wavy', MIXES['few white'] as Population[]),
      seed: 4,
      dpr: 1,
      pxPerCm: 15,
      sheen: 1,
      fromCm: 0,
      toCm: 18,
      half: 'today',
    };
    const [first, again, other] = [await read(ask), await read(ask), await read({ ...ask, seed: 5 })];
    expect(again).toEqual(first);
    expect(other.mean).not.toEqual(first.mean);
  });

  it('gives a still as PNG with the hair on its ground', async () => {
    const still = await page.evaluate(
      (picture) =>
        strand.readStill(
          picture,
          { width: 400, scale: 2, unit: 'cm', ground: 'rgb(128 128 128)' },
          [300, 70],
        ),
      whole('straight', MIXES['very dark'] as Population[]),
    );
    expect(still.type).toBe('image/png');
    expect(still.width).toBe(800);
    expect(still.corner).toEqual([128, 128, 128, 255]);
    expect(still.hair[1]).toBeLessThan(110);
  });
});
