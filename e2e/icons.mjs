// Draws web/public/icons/*.png from mark.svg. Run after changing the mark: node icons.mjs
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { launchOptions } from './support/launch.mjs';

const folder = fileURLToPath(new URL('../web/public/icons/', import.meta.url));
const svg = readFileSync(`${folder}mark.svg`, 'utf8');
const browser = await chromium.launch(launchOptions);
// A maskable icon fills the square: its outer tenth may be cut away by the device.
for (const [name, size, drawing] of [
  ['icon-192', 192, svg],
  ['icon-512', 512, svg],
  ['icon-maskable-512', 512, svg.replace('rx="14"', '')],
]) {
  const page = await browser.newPage({
    viewport: { width: size, height: size },
  });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px}</style>${drawing}`);
  await page.screenshot({ path: `${folder}${name}.png`, omitBackground: true });
  await page.close();
}
await browser.close();
