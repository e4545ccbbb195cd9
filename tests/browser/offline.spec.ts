import { readFileSync } from 'node:fs';
import { type Page, test, expect as usual } from '@playwright/test';
import { strFromU8, unzipSync } from 'fflate';
import { documents } from '../../notebooks/contents.ts';
import { type OwnServer, startServer } from './ownServer.ts';
import { expectNoSidewaysScrolling, findViolations, readInputs, settled, typeInto } from './stepwellPage.ts';

test.use({ serviceWorkers: 'allow' });

/** Taking in or reading megabytes may take a busy machine longer than the usual five seconds. */
const expect = usual.configure({ timeout: 20_000 });

let server: OwnServer;
test.beforeEach(async () => {
  server = await startServer();
});
test.afterEach(() => server.stop());

const line = (page: Page) => page.locator('.taken-along');
const newer = (page: Page) => page.locator('.notice[data-topic="newer"]');

/** The first visit, until the browser has all of it. */
async function visit(page: Page): Promise<void> {
  await page.goto(server.address);
  await expect(line(page)).toContainText('It has all the pages now', { timeout: 30_000 });
}

async function goTo(page: Page, id: string): Promise<void> {
  await page.goto(`${server.address}#${id}`);
  await expect(page.locator(`main#${id}`)).toBeVisible();
  await settled(page);
}

/** Everything that fails for want of a network. */
function watchFailures(page: Page): string[] {
  const failures: string[] = [];
  page.on('pageerror', (error) => failures.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') failures.push(message.text());
  });
  page.on('requestfailed', (request) => failures.push(`failed: ${request.url()}`));
  return failures;
}

test('after the first visit every document opens, computes and prints without network', async ({
  page,
  context,
}) => {
  await visit(page);
  await server.stop();
  await context.setOffline(true);
  await expect(
    page.evaluate((address) => fetch(`${address}nowhere.txt`), server.address),
    'there is no network',
  ).rejects.toThrow();
  const failures = watchFailures(page);
  await page.reload();
  await expect(line(page)).toContainText('open without network');
  expect(await findViolations(page)).toEqual([]);
  for (const { id } of documents) {
    await goTo(page, id);
    await expect(page.locator('main .problem').filter({ visible: true }), id).toHaveCount(0);
  }

  await goTo(page, 'through-focus');
  // What a worker computes follows the inputs.
  const planes = page.locator('#block-planes-table');
  const before = await planes.textContent();
  expect(before).toMatch(/\d mm|\d\s?µm/);
  await page.evaluate(() => window.stepwell.set({ 'laser.beamDiameter': 4e-3 }));
  await settled(page);
  await expect.poll(() => planes.textContent()).not.toBe(before);
  expect(page.workers().length).toBeGreaterThan(0);

  await goTo(page, 'write-up');
  const coming = page.waitForEvent('download', { timeout: 60_000 });
  await page
    .getByRole('group', { name: 'Design rationale' })
    .getByRole('button', { name: 'Word document (DOCX)' })
    .click();
  const docx = unzipSync(new Uint8Array(readFileSync(await (await coming).path())));
  expect(strFromU8(docx['word/document.xml']!)).toMatch(/step ratio/i);
  expect(Object.keys(docx).filter((name) => name.endsWith('.png')).length).toBeGreaterThan(5);
  expect(failures).toEqual([]);
});

test('a newer version waits until it is taken, and the design comes back in it', async ({
  page,
  context,
}) => {
  await visit(page);
  await goTo(page, 'matching');
  const other = await context.newPage();
  await other.goto(`${server.address}#threshold`);
  await settled(other);
  await expect(newer(page)).toHaveCount(0);

  server.renew('Renewed');
  await page.reload();
  await settled(page);
  await expect(newer(page)).toContainText('A newer version of these pages is here.', { timeout: 30_000 });
  expect(await findViolations(page, '.notices')).toEqual([]);
  await typeInto(page, 'laser.beamDiameter', '4 mm');

  const html = () => page.evaluate(() => fetch('./').then((answer) => answer.text()));
  expect(await html(), 'nothing is taken unasked').not.toContain('<title>Renewed');
  const loaded = page.waitForEvent('load');
  await newer(page).getByRole('button', { name: 'Use it now' }).click();
  await loaded;
  await settled(page);
  expect(await html()).toContain('<title>Renewed');
  expect((await readInputs(page))['laser.beamDiameter']).toBe(4e-3);
  await expect(page.locator('main#matching')).toBeVisible();
  await expect(newer(page)).toHaveCount(0);

  await expect(newer(other)).toContainText('was opened in another tab');
  await expect(other.locator('main#threshold')).toBeVisible();
});

test('a browser can install it', async ({ page, request }) => {
  await page.goto(server.address);
  const href = await page.locator('link[rel="manifest"]').getAttribute('href');
  const manifest = await (await request.get(new URL(href!, server.address).href)).json();
  expect(manifest).toMatchObject({ name: 'Stepwell', start_url: './', display: 'standalone' });
  const purposes = manifest.icons.map(({ purpose }: { purpose: string }) => purpose);
  expect(purposes).toContain('maskable');
  for (const { src, sizes, type } of manifest.icons) {
    const answer = await request.get(new URL(src, server.address).href);
    expect(answer.ok(), src).toBe(true);
    if (type !== 'image/png') continue;
    // Width and height stand behind the head of the first chunk (ISO/IEC 15948, 11.2.2).
    const bytes = await answer.body();
    expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
  }
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`the line about it has room on a narrow page, ${colorScheme}`, async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.emulateMedia({ colorScheme });
    await visit(page);
    await expectNoSidewaysScrolling(page);
    expect(await findViolations(page)).toEqual([]);
  });
}
