import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium, type Page } from '@playwright/test';
import { prepareBrowser } from '../browser/prepareBrowser.ts';
import type { Row } from './timing.ts';

const address = 'http://localhost:4178';

/** Runs on a document of the built page in Chromium; where that cannot be, says so in a row. */
export async function withPage(id: string, run: (page: Page) => Promise<Row[]>): Promise<Row[]> {
  const what = `the page of ${id}`;
  if (!existsSync(new URL('../../dist/page/index.html', import.meta.url))) {
    return [{ what, remark: 'the page is not built: run npm run build' }];
  }
  const executablePath = prepareBrowser();
  if (executablePath === undefined) return [{ what, remark: 'no browser' }];
  const server = await serve();
  const browser = await chromium.launch({ executablePath });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    // The loader of this script gives functions their names by a helper that pages do not have.
    await page.addInitScript('globalThis.__name = (named) => named');
    await page.goto(`${address}/#${id}`);
    await page.waitForFunction(() => 'stepwell' in window);
    await page.evaluate(() => window.stepwell.settled());
    return await run(page);
  } finally {
    await browser.close();
    server.kill();
  }
}

async function serve(): Promise<ChildProcess> {
  const vite = new URL('../../node_modules/vite/bin/vite.js', import.meta.url).pathname;
  const server = spawn(process.execPath, [vite, 'preview', '--port', '4178', '--strictPort'], {
    cwd: new URL('../..', import.meta.url).pathname,
    stdio: 'ignore',
  });
  for (let i = 0; i < 100; i++) {
    const answer = await fetch(address).catch(() => undefined);
    if (answer?.ok) return server;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  server.kill();
  throw new Error(`The page could not be served at ${address}.`);
}

/** Milliseconds from the moment the key was pressed or the pointer moved, as the browser stamps it. */
export interface Timed {
  readonly settled: number;
  readonly painted: number;
}

declare global {
  interface Window {
    timed: Promise<Timed> | undefined;
  }
}

/**
 * Runs in the page: measures each key press or move of a slider until everything is up to date, and until the frame that
 * shows it is painted.
 */
export function watchInputs(figure?: string): void {
  if (window.timed) return;
  window.timed = Promise.resolve({ settled: 0, painted: 0 });
  /** The figure shows what belongs to the inputs; without one, everything does. */
  const upToDate = (): Promise<unknown> => {
    if (figure === undefined) return window.stepwell.settled();
    const holder = document.querySelector(figure)!;
    const isFresh = () => !holder.hasAttribute('data-pending');
    if (isFresh()) return Promise.resolve();
    return new Promise<void>((resolve) => {
      const observer = new MutationObserver(() => {
        if (!isFresh()) return;
        observer.disconnect();
        resolve();
      });
      observer.observe(holder, { attributes: true });
    });
  };
  const time = ({ timeStamp }: Event) => {
    const channel = new MessageChannel();
    window.timed = upToDate()
      .then(() => performance.now() - timeStamp)
      .then(async (settled) => {
        await new Promise(requestAnimationFrame);
        // A message sent as a frame begins arrives when that frame has been laid out and painted.
        await new Promise((resolve) => {
          channel.port1.onmessage = resolve;
          channel.port2.postMessage(0);
        });
        return { settled, painted: performance.now() - timeStamp };
      });
  };
  // Bubbling, so that the field has changed the design before.
  window.addEventListener('keydown', time);
  window.addEventListener('input', ({ target, timeStamp }) => {
    if ((target as HTMLInputElement).type === 'range') time({ timeStamp } as Event);
  });
}
