import { defineConfig } from 'vite';

/** Bundles the command line for Node; what only some commands need stands in files of its own. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  // A program of the machine's own kind cannot be bundled.
  ssr: { noExternal: true, external: ['@resvg/resvg-js'] },
  build: {
    ssr: 'notebooks/command/stepwell.ts',
    outDir: 'dist/command',
    emptyOutDir: true,
    target: 'node20',
    minify: false,
  },
});
