import { svelte } from '@sveltejs/vite-plugin-svelte';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';

// The local server that answers /api while the pages are served by `vite dev`.
const api = process.env.STRANDLINE_API ?? 'http://127.0.0.1:7407';

// The policy the server sends with every page; `vite preview` sends the same.
const policy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; " +
  "connect-src 'self'; manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'self'; " +
  "frame-ancestors 'none'";

export default defineConfig({
  base: './',
  plugins: [
    svelte(),
    VitePWA({
      registerType: 'prompt',
      injectRegister: false,
      includeAssets: ['icons/*.png', 'icons/mark.svg'],
      manifest: {
        name: 'Strandline',
        short_name: 'Strandline',
        description: 'The working tool of a professional hair colourist',
        display: 'standalone',
        orientation: 'any',
        start_url: './',
        scope: './',
        background_color: '#1c1c1c',
        theme_color: '#1c1c1c',
        icons: [
          { src: 'icons/icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icons/icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icons/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,woff2}'],
        navigateFallback: 'index.html',
        navigateFallbackDenylist: [/^\/api\//],
        cleanupOutdatedCaches: true,
      },
    }),
  ],
  resolve: { conditions: process.env.VITEST ? ['browser'] : undefined },
  build: {
    target: 'es2022',
    // Assets stay files: data: URLs would need a wider Content-Security-Policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // kB unpacked. The first load of script, one language included, aims at 160 KB packed.
    chunkSizeWarningLimit: 450,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  server: { proxy: { '/api': api } },
  preview: { proxy: { '/api': api }, headers: { 'Content-Security-Policy': policy } },
  test: {
    environment: 'happy-dom',
    include: ['src/**/*.test.ts'],
    exclude: ['src/**/*.browser.test.ts'], // these run in Chromium: vitest.browser.config.ts
    setupFiles: ['src/test-setup.ts'],
  },
});
