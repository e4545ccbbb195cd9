import { defineConfig } from '@playwright/test';

const executablePath = process.env['STEPWELL_BROWSER'];

/** One Chromium for the whole suite, against the built page served on this machine. */
export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  fullyParallel: false,
  workers: 1,
  timeout: 120_000,
  reporter: [['list'], ['json']],
  use: {
    baseURL: 'http://localhost:4179',
    viewport: { width: 1440, height: 900 },
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
    command: 'npx --no-install vite preview --port 4179 --strictPort',
    url: 'http://localhost:4179',
    cwd: new URL('../..', import.meta.url).pathname,
    reuseExistingServer: false,
  },
});
