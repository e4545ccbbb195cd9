import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    environment: 'node',
    testTimeout: 120_000,
    // One core fewer is the usual; on the two of a small machine that doubles the time.
    maxWorkers: '100%',
    // Files of one worker share its modules instead of loading the graph anew for each: 27 s of processor instead of 44 s
    // for tests/notebooks and tests/graph, measured once. No test may leave a global changed.
    isolate: false,
  },
});
