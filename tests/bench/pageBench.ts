import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium, type Page } from '@playwright/test';
import { prepareBrowser } from '../browser/prepareBrowser.ts';
import { percentile, type Row } from './timing.ts';

const address = 'http://localhost:4178';
const changes = 60;
const warm = 10;
/** A frame at 30 Hz: what a change may take until it is painted. */
const aim = 33;

/** Each input with its element of the beam path, and the key that changes it by a step. */
const inputs: readonly (readonly [element: string, id: string, key: string])[] = [
  ['laser', 'laser.beamDiameter', 'ArrowUp'],
  ['plate', 'plate.designPhase', 'ArrowDown'],
  ['workpiece', 'workpiece.z', 'Alt+ArrowUp'],
];

/** From a real key press in a field to the painted page, in Chromium on the built page. */
export async function benchPage(): Promise<Row[]> {
  if (!existsSync(new URL('../../dist/page/index.html', import.meta.url))) {
    return [{ what: 'input to painted page', remark: 'the page is not built: run npm run build' }];
  }
  const executablePath = prepareBrowser();
  if (executablePath === undefined) return [{ what: 'input to painted page', remark: 'no browser' }];
  const server = await serve();
  const browser = await chromium.launch({ executablePath });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(`${address}/#matching`);
    await page.evaluate(() => window.stepwell.settled());
    const rows: Row[] = [];
    for (const [element, id, key] of inputs) rows.push(...(await benchInput(page, element, id, key)));
    return rows;
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

async function benchInput(page: Page, element: string, id: string, key: string): Promise<Row[]> {
  await page.locator(`.beam-place[data-element="${element}"]`).click();
  await page.locator(`.field[data-input="${id}"] input[type="text"]`).first().focus();
  await page.evaluate(watchKeys);
  const times: Timed[] = [];
  for (let i = 0; i < changes + warm; i++) {
    await page.keyboard.press(key);
    times.push(await page.evaluate(() => window.timed!));
    await page.waitForTimeout(50);
  }
  const counted = times.slice(warm);
  const painted = counted.map((one) => one.painted);
  const remark = percentile(painted, 0.95) <= aim ? `within ${aim} ms` : `above the aim of ${aim} ms`;
  return [
    { what: `${id}, arrow key to up-to-date page`, times: counted.map((one) => one.settled) },
    { what: `${id}, arrow key to the painted page`, times: painted, remark },
  ];
}

/** Milliseconds from the moment the key was pressed, as the browser stamps it. */
interface Timed {
  readonly settled: number;
  readonly painted: number;
}

declare global {
  interface Window {
    timed: Promise<Timed> | undefined;
  }
}

/** Runs in the page: measures each key press until everything is up to date, and until the frame that shows it is painted. */
function watchKeys(): void {
  if (window.timed) return;
  window.timed = Promise.resolve({ settled: 0, painted: 0 });
  // Bubbling, so that the field has changed the design before.
  window.addEventListener('keydown', ({ timeStamp }) => {
    const channel = new MessageChannel();
    window.timed = window.stepwell
      .settled()
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
  });
}
