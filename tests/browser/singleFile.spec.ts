import { readFileSync, statSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Page, test, expect as usual } from '@playwright/test';
import { stepRatio } from '../../lib/design/match.ts';
import { usedBeamDiameter } from '../../lib/design/rawBeam.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { decodeCameraImage } from '../../lib/measured/cameraImage.ts';
import { documents } from '../../notebooks/contents.ts';
import { shippedLectures } from '../../notebooks/lectures/shipped.ts';
import { title, upToDate } from './givenLecture.ts';
import { tabTo } from './lessonSteps.ts';
import { createHeadless, findViolations, readInputs, settled, typeInto } from './stepwellPage.ts';

/** Taking in or reading megabytes may take a busy machine longer than the usual five seconds. */
const expect = usual.configure({ timeout: 20_000 });

const single = fileURLToPath(new URL('../../dist/single/stepwell.html', import.meta.url));
const address = pathToFileURL(single).href;
const imagePath = fileURLToPath(new URL('../../data/measured/rain-gauge-beam.png', import.meta.url));

const notice = (page: Page, topic: string) => page.locator(`.notice[data-topic="${topic}"]`);

/** Everything that must not happen to a page from disk: errors, refusals of its policy, other files or addresses. */
async function watchComplaints(page: Page): Promise<string[]> {
  const complaints: string[] = [];
  await page.exposeFunction('complain', (text: string) => complaints.push(text));
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
      const { complain } = window as unknown as { complain(text: string): void };
      complain(`policy: ${violatedDirective} blocks ${blockedURI}`);
    });
  });
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('request', (request) => {
    const url = request.url();
    if (!/^(data|blob):/.test(url) && url.split('#')[0] !== address) complaints.push(`request: ${url}`);
  });
  return complaints;
}

async function goTo(page: Page, id: string): Promise<void> {
  await page.goto(`${address}#${id}`);
  await expect(page.locator(`main#${id}`)).toBeVisible();
  await settled(page);
}

test.beforeEach(({ context }) => context.setOffline(true));

test('from disk a beam image leads to a plane that can be used, and to the rationale', async ({
  page,
  context,
}) => {
  const complaints = await watchComplaints(page);
  await page.goto(address);
  await expect(page.locator('.taken-along')).toContainText('it opens from disk, without network');
  const choosing = page.waitForEvent('filechooser');
  await page.getByText('I have a beam image').click();
  await (await choosing).setFiles(imagePath);
  await expect(page.locator('main#matching')).toBeVisible();
  await settled(page);

  // Beam and match, against the same worked out without a page.
  await page.getByRole('button', { name: 'equal diameters' }).click();
  await settled(page);
  const image = decodeCameraImage(new Uint8Array(readFileSync(imagePath)), 'rain-gauge-beam.png');
  const outcomeOf = createHeadless()({ ...(await readInputs(page)), 'laser.beamImage': image });
  for (const quantity of [usedBeamDiameter, stepRatio]) {
    const shown = page.locator(`#block-today [data-quantity="${quantity.id}"]`).first();
    await expect(shown).toHaveText(shownValue(quantity, outcomeOf(quantity)));
  }

  await page.getByRole('navigation', { name: 'Documents' }).getByRole('link', { name: 'Focus' }).click();
  await expect(page.locator('main#through-focus')).toBeVisible();
  await settled(page);
  expect(page.workers().length, 'a worker draws the map').toBeGreaterThan(0);
  const drawn = () => page.locator('#block-map canvas').evaluate((map: HTMLCanvasElement) => map.toDataURL());
  const before = await drawn();
  await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 3 }));
  await settled(page);
  await expect.poll(drawn, 'the map follows').not.toBe(before);
  await page
    .locator('#block-planes-table')
    .getByRole('button', { name: /^Move the workpiece to/ })
    .first()
    .click();
  await settled(page);
  expect((await readInputs(page))['workpiece.z']).not.toBe(0);
  await expect(page.locator('#block-planes-table')).toContainText('here');

  await goTo(page, 'write-up');
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await page
    .getByRole('group', { name: 'Design rationale' })
    .getByRole('button', { name: 'HTML page' })
    .click();
  const html = readFileSync(await (await coming).path(), 'utf8');
  expect(html).toContain('rain-gauge-beam.png');
  expect(html.match(/<figcaption/g)!.length).toBeGreaterThan(5);

  // A link to the file carries the design without its picture, and the design comes back with it.
  await goTo(page, 'matching');
  await page.evaluate(() => window.stepwell.set({ 'laser.beamSource': 'typed', 'laser.beamDiameter': 4e-3 }));
  await page.locator('.design-menu summary').click();
  await page.getByRole('button', { name: 'Copy link' }).click();
  const link = await page.getByLabel('Link to this design').inputValue();
  expect(link.startsWith(`${address}#matching?design=`)).toBe(true);
  const other = await context.newPage();
  await other.goto(link);
  await settled(other);
  expect(await other.evaluate(() => window.stepwell.state().inputs['laser.beamDiameter'])).toBe(4e-3);

  expect(complaints).toEqual([]);
});

test('every document opens from disk', async ({ page }) => {
  const complaints = await watchComplaints(page);
  for (const { id } of documents) {
    await goTo(page, id);
    await expect(page.locator('main .problem').filter({ visible: true }), id).toHaveCount(0);
  }
  const fonts = await page.evaluate(
    () => [...document.fonts].filter(({ status }) => status === 'error').length,
  );
  expect(fonts).toBe(0);
  expect(complaints).toEqual([]);
});

test('a lesson is taken from disk: a wrong answer gets its reason, the right one goes on', async ({
  page,
}) => {
  const complaints = await watchComplaints(page);
  await goTo(page, 'lessons');
  await page.getByRole('link', { name: 'The threshold plot' }).click();
  const task = page.locator('.lesson-task').first();
  const options = task.getByRole('radio');
  await expect(options.first()).toBeVisible({ timeout: 30_000 });
  const replies: string[] = [];
  for (const option of await options.all()) {
    await option.check();
    await task.locator('button[type="submit"]').click();
    const reply = task.locator('.lesson-reply');
    await expect.poll(() => reply.textContent()).not.toBe(replies.at(-1) ?? '');
    replies.push((await reply.textContent())!);
    if (await page.locator('.lesson-next').isVisible()) break;
  }
  expect(replies.length, 'the first option is a wrong one').toBeGreaterThan(1);
  for (const reply of replies) expect(reply.length).toBeGreaterThan(40);
  await page.locator('.lesson-next').click();
  await expect(page.locator('.lesson-task')).toHaveCount(2);
  expect(complaints).toEqual([]);
});

test('from disk a lecture is given by keyboard, with the lecturer’s page beside it', async ({ page }) => {
  test.setTimeout(240_000);
  const complaints = await watchComplaints(page);
  const [lecture] = shippedLectures;
  await goTo(page, 'lectures');
  await tabTo(page, `a[href="#lectures/${lecture!.id}/1"]`, 'main');
  await page.keyboard.press('Enter');
  await expect(title(page)).toHaveText(lecture!.steps[0]!.title);
  const [beside] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')]);
  beside.on('console', (message) => complaints.push(`lecturer’s page: ${message.text()}`));
  const heading = beside.getByRole('heading', { level: 1 });
  await expect(heading).toHaveText(lecture!.steps[0]!.title);
  await expect(heading, 'its style sheet comes with it').toHaveCSS('font-family', /Source S/);
  await page.bringToFront();
  for (const [i, step] of lecture!.steps.slice(0, 4).entries()) {
    if (i > 0) await page.keyboard.press('PageDown');
    await expect(title(page)).toHaveText(step.title);
    await expect(heading).toHaveText(step.title);
    if (step.ask) {
      await expect(
        page.locator('main.giving [data-withheld]').locator('.value:visible, canvas:visible'),
      ).toHaveCount(0);
      await page.keyboard.press('1');
      await expect(beside.locator('.lecturer-room')).toHaveText(`The room says: ${step.ask.options[0]}`);
      await page.keyboard.press('PageDown');
      await expect(page.locator('main.giving [data-withheld]')).toHaveCount(0);
    }
    await upToDate(page);
  }
  // The second window leads the first.
  await beside.keyboard.press('PageUp');
  await expect(title(page)).toHaveText(lecture!.steps[2]!.title);
  await page.keyboard.press('Escape');
  await expect(page.locator('main#lectures')).toBeVisible();
  await expect.poll(() => beside.isClosed()).toBe(true);
  expect(complaints).toEqual([]);
});

test('from disk a word is found, and its number stands there', async ({ page }) => {
  const complaints = await watchComplaints(page);
  await goTo(page, 'matching');
  await page.keyboard.press('/');
  await page.keyboard.type('raleigh lenght');
  await expect(page.getByRole('option').first()).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#words\/rayleigh-length$/);
  const word = page.locator('article[data-within="rayleigh-length"]');
  await expect(word).toBeInViewport();
  await expect(word.locator('[data-quantity="focus.rayleighLength"]')).toHaveText('131.1\u202fµm');
  expect(complaints).toEqual([]);
});

test('its policy allows no address and no other script', async ({ page }) => {
  await page.goto(address);
  const policy = (await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content'))!;
  expect(policy).toMatch(/^default-src 'none'; script-src 'sha256-[\w+/]{43}=' 'wasm-unsafe-eval';/);
  expect(policy).not.toMatch(/https?:|'self'|unsafe-eval(?!')|\*/);
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.foreign = true';
    document.body.append(script);
    return 'foreign' in window;
  });
  expect(ran).toBe(false);
  await expect(page.locator('link[rel="manifest"], link[rel="stylesheet"]')).toHaveCount(0);
  expect(statSync(single).size).toBeLessThan(12e6);
});

test('where a browser keeps nothing for files from disk, it is said and all else works', async ({ page }) => {
  const complaints = await watchComplaints(page);
  await page.addInitScript(() => {
    const refuse = () => {
      throw new DOMException('not here', 'SecurityError');
    };
    const refused = () => Promise.reject(new DOMException('not here', 'SecurityError'));
    for (const name of ['indexedDB', 'localStorage', 'sessionStorage'])
      Object.defineProperty(window, name, { get: refuse });
    Object.defineProperty(navigator, 'locks', { value: { request: refused } });
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: refused } });
  });
  await goTo(page, 'matching');
  await expect(notice(page, 'design'), 'no lock is not another tab').toHaveCount(0);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await settled(page);
  await expect(notice(page, 'trouble')).toContainText('Save it to a file to keep it.');
  expect(await findViolations(page, '.notices')).toEqual([]);
  await page.locator('.design-menu summary').click();
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.locator('.design-status')).toContainText('copy the link from the field');
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save to a file' }).click();
  expect((await coming).suggestedFilename()).toBe('design.json');
  expect(complaints).toEqual([]);
});
