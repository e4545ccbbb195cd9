import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium } from '@playwright/test';
import { createRandom } from '../../lib/numerics/random.ts';
import { crash, judge, type Kill, sumUp, type Typing, typeFor } from './killing.ts';
import { prepareBrowser } from './prepareBrowser.ts';

/**
 * Kills a tab, or the whole browser, again and again while somebody types, and measures what is lost. Not a test: takes
 * minutes. `npm run kills -- 100` after `npm run build`.
 */
const count = Number(process.argv[2] ?? 100);
const port = 4183;
const executablePath = prepareBrowser()!;
const folder = mkdtempSync(join(tmpdir(), 'stepwell-kills-'));
const random = createRandom(Number(process.argv[3] ?? 61));
const server = spawn('npx', ['--no-install', 'vite', 'preview', '--port', String(port), '--strictPort'], {
  stdio: 'ignore',
  detached: true,
});

function open(): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, {
    executablePath,
    baseURL: `http://localhost:${port}`,
    args: ['--no-first-run', '--disable-background-networking'],
  });
}

async function served(): Promise<void> {
  for (let i = 0; i < 100; i++) {
    if (
      await fetch(`http://localhost:${port}`).then(
        ({ ok }) => ok,
        () => false,
      )
    )
      return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('The page is not served; run npm run build first.');
}

/** The browser's process: the parent of all that hold the folder. */
async function killBrowser(context: BrowserContext): Promise<void> {
  const session = await context.browser()!.newBrowserCDPSession();
  const { processInfo } = (await session.send('SystemInfo.getProcessInfo')) as {
    processInfo: readonly { readonly type: string; readonly id: number }[];
  };
  const closed = context.waitForEvent('close');
  process.kill(processInfo.find(({ type }) => type === 'browser')!.id, 'SIGKILL');
  await closed;
}

async function once(context: BrowserContext, whole: boolean, what: Typing): Promise<[BrowserContext, Kill]> {
  const page = await context.newPage();
  await page.goto('/#matching');
  await page.locator('main#matching').waitFor();
  const typed = await typeFor(page, random.between(300, 2500), random, what);
  const killed = Date.now();
  if (whole) await killBrowser(context);
  else await crash(page);
  const next = whole ? await open() : context;
  const fresh = await next.newPage();
  const kill = await judge(fresh, typed, killed);
  await fresh.close();
  if (!whole) await page.close();
  return [next, kill];
}

async function run(): Promise<Kill[]> {
  await served();
  const kills: Kill[] = [];
  let context = await open();
  for (let i = 0; i < count; i++) {
    const [next, kill] = await once(context, i % 2 === 1, i % 5 === 4 ? 'name' : 'numbers');
    context = next;
    kills.push(kill);
    const back = kill.draft ? ', came back with something not taken' : '';
    console.log(`${i + 1}: ${kill.typed} keys, lost ${kill.lost} ms${back}${kill.wrong ? ', WRONG' : ''}`);
  }
  await context.close();
  return kills;
}

try {
  const kills = await run();
  const { words, bad } = sumUp(kills);
  console.log(words);
  process.exitCode = bad > 0 ? 1 : 0;
} finally {
  process.kill(-server.pid!);
  rmSync(folder, { recursive: true, force: true });
}
