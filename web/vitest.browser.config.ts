import { defineConfig } from 'vitest/config';

// Tests that read pixels in a real Chromium; they need the packages of ../e2e and take a minute.
export default defineConfig({
  test: {
    environment: 'node',
    include: ['src/**/*.browser.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
    fileParallelism: false,
  },
});
