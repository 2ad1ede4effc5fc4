import { defineConfig } from '@playwright/test';
import { launchOptions } from './support/launch.mjs';

export default defineConfig({
  testDir: 'tests',
  // Each test starts a server of its own with a new demo salon. One at a time: a page that draws in software, its
  // server's search and a second pair of them on two cores made waits run out. A test that passes only the second time
  // is listed as flaky and counts as failed.
  workers: 1,
  retries: 1,
  fullyParallel: false,
  timeout: 420_000,
  expect: { timeout: 30_000 },
  forbidOnly: Boolean(process.env.CI),
  outputDir: '../.cache/e2e',
  use: {
    launchOptions,
    actionTimeout: 30_000,
    viewport: { width: 1180, height: 820 },
    locale: 'en-GB',
    timezoneId: 'Europe/Paris',
  },
});
