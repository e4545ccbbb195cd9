import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { drawIcons } from './notebooks/takeAlong/drawIcons.ts';
import { keepForOffline } from './notebooks/takeAlong/keepForOffline.ts';
import { onlyWoff2 } from './notebooks/takeAlong/onlyWoff2.ts';

/** The page: built into dist/page, served on this machine only. */
export default defineConfig({
  root: fileURLToPath(new URL('notebooks', import.meta.url)),
  base: './',
  build: {
    outDir: '../dist/page',
    emptyOutDir: true,
    // Fonts stay files: the page's policy allows no data: URL for them.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2500,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  plugins: [onlyWoff2(), drawIcons(), keepForOffline()],
  server: { host: 'localhost' },
  preview: { host: 'localhost' },
});
