import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium, type Page } from '@playwright/test';
import { prepareBrowser } from '../browser/prepareBrowser.ts';
import { percentile, type Row } from './timing.ts';

const address = 'http://localhost:4178';
const changes = 60;
/** A frame at 30 Hz: what a change may take until it is painted. */
const aim = 33;

/** Each input with the values it runs through, around the default design. */
const inputs: readonly (readonly [id: string, valueAt: (part: number) => number])[] = [
  ['laser.beamDiameter', (part) => 4e-3 + 2e-3 * part],
  ['plate.designPhase', (part) => Math.PI * (0.7 + 0.6 * part)],
  ['workpiece.z', (part) => 2e-4 * (part - 0.5)],
];

/** From setting an input to the painted page, in Chromium on the built page. */
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
    for (const [id, valueAt] of inputs) rows.push(...(await benchInput(page, id, valueAt)));
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

async function benchInput(page: Page, id: string, valueAt: (part: number) => number): Promise<Row[]> {
  const values = Array.from({ length: changes + 10 }, (_, i) =>
    valueAt((i % (changes + 10)) / (changes + 9)),
  );
  const both = await page.evaluate(measure, { id, values });
  const counted = both.slice(10);
  const painted = counted.map((one) => one.painted);
  const remark = percentile(painted, 0.95) <= aim ? `within ${aim} ms` : `above the aim of ${aim} ms`;
  return [
    { what: `${id} to up-to-date page`, times: counted.map((one) => one.settled) },
    { what: `${id} to the end of the frame that shows it`, times: counted.map((one) => one.shown) },
    { what: `${id} to the second frame after`, times: painted, remark },
  ];
}

/**
 * Runs in the page: times from set() until everything is up to date, until the frame that shows it has been painted, and
 * until the second frame after that begins. Each change comes right after a frame has begun, so a whole frame passes first.
 */
async function measure({ id, values }: { id: string; values: number[] }) {
  const times: { settled: number; shown: number; painted: number }[] = [];
  for (const value of values) {
    await new Promise(requestAnimationFrame);
    const start = performance.now();
    window.stepwell.set({ [id]: value });
    await window.stepwell.settled();
    const settled = performance.now() - start;
    // The page settles inside a frame: a message sent now arrives when that frame has been laid out and painted.
    const channel = new MessageChannel();
    await new Promise((resolve) => {
      channel.port1.onmessage = resolve;
      channel.port2.postMessage(0);
    });
    const shown = performance.now() - start;
    // Surely painted: one more frame may lay out, the next begins when that is done.
    await new Promise(requestAnimationFrame);
    await new Promise(requestAnimationFrame);
    times.push({ settled, shown, painted: performance.now() - start });
  }
  return times;
}
