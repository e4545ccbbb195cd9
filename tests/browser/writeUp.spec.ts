import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { strFromU8, unzipSync } from 'fflate';
import { expectNoSidewaysScrolling, findViolations, openDocument, settled } from './stepwellPage.ts';

const design = (name: string) => fileURLToPath(new URL(`../../data/designs/${name}.json`, import.meta.url));

/** Opens a document with an invented design in it. */
async function openWith(page: Page, id: string, name: string): Promise<void> {
  await openDocument(page, id);
  await page.setInputFiles('#design-file', design(name));
  await expect(page.locator('.notice')).toBeVisible();
  await settled(page);
}

/** Bytes of what a press brings to save, and its name. */
async function saved(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Uint8Array }> {
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: 60_000 }), press()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

const purpose = 'Drops must run off: the spot is {spot.width} wide.';
const kinds = [
  'HTML page',
  'Markdown with figures (zip)',
  'Word document (DOCX)',
  'References (BibTeX)',
] as const;

async function checkFiles(page: Page, files: readonly { name: string; bytes: Uint8Array }[]): Promise<void> {
  const stem = 'rain-gauge-funnel-design-rationale';
  expect(files.map(({ name }) => name)).toEqual([
    `${stem}.html`,
    `${stem}.md.zip`,
    `${stem}.docx`,
    `${stem}.bib`,
  ]);
  const [html, markdown, word, sources] = files.map(({ bytes }) => bytes);
  const text = strFromU8(unzipSync(markdown!)[`${stem}.md`]!);
  expect(text).toContain('Drops must run off: the spot is 38.95\u202fµm wide.');
  expect(strFromU8(unzipSync(word!)['word/document.xml']!)).toContain('Drops must run off');
  expect(strFromU8(sources!)).toMatch(/^@\w+\{/);
  const shown = await page.context().newPage();
  await shown.setContent(strFromU8(html!));
  await expect(shown.locator('h1')).toHaveText('Design rationale: Rain-gauge funnel');
  await expect(shown.locator('body')).toContainText(
    'stepwell rationale rain-gauge-funnel.json --to FILE.html',
  );
  await expect(shown.locator('body')).toContainText('Drops must run off: the spot is 38.95\u202fµm wide.');
  const figures = await shown.locator('figure').count();
  expect(figures).toBeGreaterThan(8);
  expect(await shown.locator('figure :is(svg, img)').count()).toBeGreaterThanOrEqual(figures);
  await shown.close();
}

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${size.width} × ${size.height}`, () => {
    test.use({ viewport: size });

    test('a purpose is written, the rationale shown and handed over in every kind, with the mouse', async ({
      page,
    }) => {
      await openWith(page, 'write-up', 'rain-gauge-funnel');
      const said = page.locator('.write-up-said');
      await expect(said).toContainText('purpose');
      await page.locator('#own-words-purpose').click();
      await page.keyboard.type(purpose);
      await page.locator('#own-words-step').click();
      await expect(said).not.toContainText('purpose');
      await page.getByLabel('ripples').check();
      await page.getByRole('button', { name: 'Show the design rationale here' }).click();
      const preview = page.getByRole('region', { name: 'Preview' });
      await expect(preview.locator('.paper-title')).toHaveText('Design rationale: Rain-gauge funnel', {
        timeout: 60_000,
      });
      await expect(preview).toContainText('the spot is 38.95\u202fµm wide');
      await expect(preview.getByRole('heading', { name: 'Ripples' })).toBeAttached();
      expect(await preview.locator('figure').count()).toBeGreaterThan(8);
      // Drawn as they come into view.
      await preview.locator('figure').nth(5).scrollIntoViewIfNeeded();
      await expect(preview.locator('figure').nth(5).locator('svg').first()).toBeVisible();
      await expectNoSidewaysScrolling(page);
      const files = [];
      for (const kind of kinds)
        files.push(
          await saved(page, () => page.getByRole('button', { name: `Design rationale: ${kind}` }).click()),
        );
      await checkFiles(page, files);
      await expect(page.locator('.write-up .study-news')).toHaveText(
        'Saved as rain-gauge-funnel-design-rationale.bib.',
      );
      await page.evaluate(() => window.stepwell.set({ 'workpiece.z': 1e-4 }));
      await expect(preview).toHaveAttribute('data-older', '');
      await expect(page.getByText('The preview is older than the design')).toBeVisible();
      await settled(page);
    });
  });
}

test('the same with the keyboard alone; what is written is one step back', async ({ page }) => {
  await openWith(page, 'write-up', 'rain-gauge-funnel');
  await page.locator('#own-words-purpose').focus();
  await page.keyboard.type(purpose);
  await page.keyboard.press('Tab');
  await page.keyboard.type('The plate was there.');
  await page.keyboard.press('Tab');
  // What the design is for comes with its file.
  const texts = () =>
    page.evaluate(() => {
      const { uses: _, ...written } = window.stepwell.state().studies?.texts ?? {};
      return written;
    });
  expect(await texts()).toEqual({ purpose, step: 'The plate was there.' });
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Shift+Tab');
  const files = [];
  for (const kind of kinds) {
    const button = page.getByRole('button', { name: `Design rationale: ${kind}` });
    // On as a person goes on: by Tab until the button is reached.
    for (let i = 0; i < 60 && !(await button.evaluate((one) => one === document.activeElement)); i++)
      await page.keyboard.press('Tab');
    files.push(await saved(page, () => page.keyboard.press('Enter')));
  }
  await checkFiles(page, files);
  await page.getByRole('button', { name: 'Undo' }).focus();
  await page.keyboard.press('Enter');
  expect(await texts()).toEqual({ purpose });
  await expect(page.locator('#own-words-step')).toHaveValue('');
});

test('work for a paper can be stopped, and what was written comes back after a new load', async ({
  page,
}) => {
  await openWith(page, 'write-up', 'cold-plate-channels');
  await page.locator('#own-words-risks').fill('The plate may move.');
  await page.locator('#own-words-risks').blur();
  await page.getByRole('button', { name: 'Design rationale: HTML page' }).click();
  await page.locator('.write-up').getByRole('button', { name: 'Stop' }).click();
  await expect(page.locator('.write-up .study-news')).toHaveText('Stopped. No file was written.');
  await expect(page.getByRole('button', { name: 'Design rationale: HTML page' })).toBeFocused();
  // The history is written a moment after the hand rests.
  await page.waitForTimeout(1000);
  await page.reload();
  await expect(page.locator('#own-words-risks')).toHaveValue('The plate may move.');
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`write-up and set-up sheet, ${colorScheme}: axe finds nothing, shown paper included`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    if (colorScheme === 'dark') await page.setViewportSize({ width: 390, height: 844 });
    await openDocument(page, 'write-up');
    await page.getByRole('button', { name: 'Show the set-up sheet here' }).click();
    await expect(page.locator('.paper-title')).toContainText('Set-up sheet', { timeout: 60_000 });
    // Older than the design it reads as well as before.
    await page.evaluate(() => window.stepwell.set({ 'workpiece.z': 1e-4 }));
    await settled(page);
    expect(await findViolations(page)).toEqual([]);
    await openDocument(page, 'set-up-sheet');
    await page.locator('#block-seen-table .choices-toggle').first().click();
    expect(await findViolations(page)).toEqual([]);
  });
}

for (const name of ['rain-gauge-funnel', 'lecture-table', 'cold-plate-channels']) {
  test(`the set-up sheet of ${name} prints on one side, cautions, z and order on it`, async ({ page }) => {
    await openWith(page, 'set-up-sheet', name);
    for (const format of ['A4', 'Letter']) {
      const pdf = await page.pdf({ format, printBackground: true });
      // Each page of a PDF is an object of this type.
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g), format).toHaveLength(1);
    }
    await page.emulateMedia({ media: 'print' });
    for (const id of ['before-aligning', 'x-rays', 'direction', 'alignment', 'seen-table', 'acceptance'])
      await expect(page.locator(`#block-${id}`)).toBeVisible();
    await expect(page.locator('.beam-path')).toBeHidden();
    await expect(page.locator('.printed-head')).toContainText(/, printed on \d{4}-\d\d-\d\d/);
  });

  test(`the set-up sheet of ${name} is read at 390 px without scrolling sideways, and its file prints on one side`, async ({
    page,
  }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await openWith(page, 'set-up-sheet', name);
    await expectNoSidewaysScrolling(page);
    for (const table of await page.locator('#set-up-sheet table:visible').all()) {
      const { x, width } = (await table.boundingBox())!;
      expect(x + width).toBeLessThanOrEqual(390);
    }
    await openWith(page, 'write-up', name);
    const { bytes } = await saved(page, () =>
      page.getByRole('button', { name: /^Set-up sheet: HTML/i }).click(),
    );
    const file = await page.context().newPage();
    await file.setContent(strFromU8(bytes));
    for (const format of ['A4', 'Letter']) {
      const pdf = await file.pdf({ format, printBackground: true });
      expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g), format).toHaveLength(1);
    }
    await file.close();
  });
}

test('the set-up sheet follows the design, and a stretch on it moves the workpiece', async ({ page }) => {
  await openDocument(page, 'set-up-sheet');
  await expect(page.locator('#block-direction')).toContainText('in the focal plane');
  await page.locator('#block-seen-table .choices-take, #block-seen-table button').first().click();
  await settled(page);
  expect(await page.evaluate(() => window.stepwell.state().inputs['workpiece.z'] as number)).toBeLessThan(0);
  await expect(page.locator('#block-direction')).toContainText('nearer to the lens');
  await expectNoSidewaysScrolling(page);
});
