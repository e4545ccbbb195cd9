import { defineConfig } from 'vite';

/** Bundles the command line into one file for Node. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  ssr: { noExternal: true },
  build: {
    ssr: 'notebooks/command/stepwell.ts',
    outDir: 'dist/command',
    emptyOutDir: true,
    target: 'node20',
    minify: false,
  },
});
