import { defineConfig } from '@playwright/test';
import base from './playwright.config';

// npm run screens: makes the pictures of docs/screens, one size at a time.
export default defineConfig({
  ...base,
  testDir: 'screens',
  workers: 1,
  timeout: 300_000,
});
