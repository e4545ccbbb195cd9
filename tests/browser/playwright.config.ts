import { defineConfig } from '@playwright/test';

const executablePath = process.env['STEPWELL_BROWSER'];
/** Another one lets two suites run beside each other. */
const port = process.env['STEPWELL_PORT'] ?? '4179';

/** One Chromium for the whole suite, against the built page served on this machine. */
export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  fullyParallel: false,
  workers: 1,
  timeout: 120_000,
  reporter: [['list'], ['json']],
  use: {
    baseURL: `http://localhost:${port}`,
    viewport: { width: 1440, height: 900 },
    // Every test begins as a first visit: taking the pages in would cost each of them some seconds.
    serviceWorkers: 'block',
    launchOptions: {
      ...(executablePath ? { executablePath } : {}),
      args: [
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--no-first-run',
      ],
    },
  },
  webServer: {
    command: `npx --no-install vite preview --port ${port} --strictPort`,
    url: `http://localhost:${port}`,
    cwd: new URL('../..', import.meta.url).pathname,
    reuseExistingServer: false,
  },
});
