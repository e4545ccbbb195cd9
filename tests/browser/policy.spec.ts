import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { openMatching, settled } from './stepwellPage.ts';

test.use({ serviceWorkers: 'allow' });

const policy =
  "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; worker-src 'self' blob:";

/** Everything that must not happen: violations of the policy, errors, requests that leave this machine. */
async function watchComplaints(page: Page): Promise<string[]> {
  const complaints: string[] = [];
  await page.exposeFunction('complain', (text: string) => complaints.push(text));
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) => {
      const { complain } = window as unknown as { complain(text: string): void };
      complain(`policy: ${event.violatedDirective} blocks ${event.blockedURI}`);
    });
  });
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    const here = ['data:', 'blob:'].includes(protocol) || hostname === 'localhost';
    if (!here) complaints.push(`request: ${request.url()}`);
  });
  page.on('requestfailed', (request) => complaints.push(`failed: ${request.url()}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`);
  });
  return complaints;
}

/** Downloads one kind of file of the first figure and returns what is in it. */
async function downloadFile(page: Page, kind: 'CSV' | 'SVG' | 'PNG'): Promise<Buffer> {
  const waiting = page.waitForEvent('download');
  await page
    .locator('.figure-block:visible .figure-files')
    .first()
    .getByRole('button', { name: kind })
    .click();
  const download = await waiting;
  expect(download.suggestedFilename()).toMatch(new RegExp(`^[a-z0-9-]+\\.${kind.toLowerCase()}$`));
  return readFileSync(await download.path());
}

test('the policy is the one that was decided, in source and build', async ({ page }) => {
  const source = readFileSync(new URL('../../notebooks/index.html', import.meta.url), 'utf8');
  const written = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(source);
  expect(written?.[1]).toBe(policy);
  await page.goto('/');
  const served = page.locator('meta[http-equiv="Content-Security-Policy"]');
  expect(await served.getAttribute('content')).toBe(policy);
});

test('a violation would be seen', async ({ page }) => {
  const complaints = await watchComplaints(page);
  await page.goto('/');
  await page.evaluate(() => {
    const image = document.createElement('img');
    image.src = 'http://127.0.0.1:9/outside.png';
    document.body.append(image);
  });
  await expect.poll(() => complaints.join('\n')).toContain('policy: img-src');
});

test('the start page keeps to the policy', async ({ page }) => {
  const complaints = await watchComplaints(page);
  await page.goto('/');
  await expect(page.locator('main.start')).toBeVisible();
  await page.waitForLoadState('networkidle');
  expect(complaints).toEqual([]);
});

test('a document keeps to the policy while it is used', async ({ page }) => {
  const complaints = await watchComplaints(page);
  await openMatching(page);

  const before = await page.evaluate(() => window.stepwell.state().inputs['laser.beamDiameter']);
  const slider = page.locator('.field[data-input="laser.beamDiameter"] input[type="range"]');
  await slider.scrollIntoViewIfNeeded();
  const box = (await slider.boundingBox())!;
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + 0.4 * box.width, y);
  await page.mouse.down();
  for (let part = 0.4; part <= 0.7; part += 0.02) await page.mouse.move(box.x + part * box.width, y);
  await page.mouse.up();
  await settled(page);
  expect(await page.evaluate(() => window.stepwell.state().inputs['laser.beamDiameter'])).not.toBe(before);

  await page.locator('.value:visible').first().click();
  await expect(page.locator('.trace')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.locator('.trace')).toBeHidden();

  const csv = (await downloadFile(page, 'CSV')).toString('utf8');
  expect(csv.split('\r\n').length).toBeGreaterThan(20);
  expect(csv).not.toMatch(/NaN|undefined/);
  const svg = (await downloadFile(page, 'SVG')).toString('utf8');
  expect(svg).toMatch(/^<svg[\s>]/);
  expect(svg).not.toMatch(/NaN|undefined|var\(/);
  const png = await downloadFile(page, 'PNG');
  // The first eight bytes of every PNG (ISO/IEC 15948, 5.2).
  expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);

  // Every figure is drawn, fonts and equations included.
  for (const figure of await page.locator('.figure-block:visible').all())
    await figure.scrollIntoViewIfNeeded();
  await page.waitForLoadState('networkidle');
  expect(complaints).toEqual([]);
});
