import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge',
  'msedge',
];
const elsewhere = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** An installed Chromium, Chrome or Edge; undefined where there is none. */
function findBrowser(): string | undefined {
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const candidates = [...folders.flatMap((folder) => names.map((name) => join(folder, name))), ...elsewhere];
  return candidates.find((path) => existsSync(path));
}

function quietly(command: string, args: readonly string[]): boolean {
  return spawnSync(command, args, { stdio: ['ignore', 'ignore', 'inherit'] }).status === 0;
}

/** The test driver's own download, where it worked. */
function downloaded(): string | undefined {
  if (!quietly('npx', ['--no-install', 'playwright', 'install', 'chromium'])) return undefined;
  const asked = spawnSync(
    'node',
    ['-e', "console.log(require('@playwright/test').chromium.executablePath())"],
    { encoding: 'utf8' },
  );
  const path = asked.stdout.trim();
  return existsSync(path) ? path : undefined;
}

/**
 * Path of a browser for the tests: an installed one, else one from the system's packages (Debian, as root), else the
 * test driver's own download. Says in one line what to do where none of it works.
 */
export function prepareBrowser(): string | undefined {
  const found = findBrowser();
  if (found) return found;
  const root = process.getuid?.() === 0;
  if (root && existsSync('/usr/bin/apt-get')) {
    console.log('No browser found; installing chromium with apt-get.');
    if (quietly('apt-get', ['update', '-qq']) && quietly('apt-get', ['install', '-y', '-qq', 'chromium'])) {
      const installed = findBrowser();
      if (installed) return installed;
    }
  }
  const own = downloaded();
  if (own) return own;
  console.error(
    'The browser tests need Chromium, Chrome or Edge: install one and run npm test again (npm run test:unit needs none).',
  );
  return undefined;
}
