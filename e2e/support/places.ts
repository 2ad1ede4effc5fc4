import { expect, type Page } from '@playwright/test';

const visit = 'demo-toner_on_lightened';
const step = (name: string) => `#/visits/${visit}/${name}`;

/** Every place of the app, by a name of its own. */
export const places = {
  home: '',
  kit: '#/kit',
  gate: step('gate'),
  reading: step('assess'),
  target: step('aim'),
  plan: step('plan'),
  agree: step('agree'),
  bowl: step('weigh'),
  clock: step('clock'),
  result: step('record'),
  aftercare: step('aftercare'),
  incident: step('incident'),
  beside: step('beside'),
  diary: '#/diary',
  stock: '#/stock',
  report: '#/stock/report',
  learned: '#/learned',
  people: '#/people',
  clients: '#/clients',
  shelves: '#/shelf',
  shelf: '#/shelf/demo',
  nothing: '#/nothing',
} as const;
export type PlaceName = keyof typeof places;

/** Comes once what the place is for is on screen. */
export async function settled(page: Page, name: PlaceName): Promise<void> {
  const worked = { timeout: 300_000 };
  const button = (label: string) =>
    expect(page.getByRole('button', { name: label }).first()).toBeVisible(worked);
  if (name === 'plan')
    await expect(page.getByRole('complementary').getByRole('heading', { level: 2 }).first()).toBeVisible(
      worked,
    );
  if (name === 'reading' || name === 'target' || name === 'agree')
    await expect(page.locator('[data-drawn="webgl"], [data-drawn="plain"]').first()).toBeVisible(worked);
  if (name === 'clock') await button('Hands on');
  if (name === 'result') await button('As predicted: hand in');
  if (name === 'shelf') await button('7 natural');
}
