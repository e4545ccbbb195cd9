import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

/** The page: built into dist/page, served on this machine only. */
export default defineConfig({
  root: fileURLToPath(new URL('notebooks', import.meta.url)),
  base: './',
  build: {
    outDir: '../dist/page',
    emptyOutDir: true,
    // Fonts stay files: the page's policy allows no data: URL for them.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1200,
  },
  server: { host: 'localhost' },
  preview: { host: 'localhost' },
});
