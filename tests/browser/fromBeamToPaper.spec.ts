import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Download, expect, type Locator, type Page, test } from '@playwright/test';
import { strFromU8, unzipSync } from 'fflate';
import { expectNoSidewaysScrolling, settled } from './stepwellPage.ts';

const data = (name: string) => fileURLToPath(new URL(`../../data/${name}`, import.meta.url));
const funnel = data('designs/rain-gauge-funnel.json');
const beam = data('measured/rain-gauge-beam.png');
const spots = data('measured/rain-gauge-spots.csv');

/** One input: all of them hold the picture, which is slow to hand over. */
const inputOf = (page: Page, id: string) => page.evaluate((one) => window.stepwell.state().inputs[one], id);
const field = (page: Page, id: string) => page.locator(`main .field[data-input="${id}"]`).first();
const find = (page: Page) => page.getByRole('region', { name: 'Find inputs' });
const proposal = (page: Page) => page.getByRole('region', { name: 'Proposal' });

/** How a person does things: with the mouse, or with the keyboard alone. */
interface Hand {
  /** Presses a button, a link, a summary or a tick. */
  press(target: Locator): Promise<void>;
  /** Puts a text into a field. */
  type(target: Locator, text: string): Promise<void>;
  /** Chooses from a list. */
  choose(target: Locator, words: string): Promise<void>;
  /** Chooses a file. */
  give(target: Locator, file: string): Promise<void>;
}

const mouse = (page: Page): Hand => ({
  press: (target) => target.click(),
  async type(target, text) {
    await target.click();
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(text);
  },
  async choose(target, words) {
    const option = target.locator('option').filter({ hasText: words }).first();
    await target.selectOption((await option.getAttribute('value'))!);
  },
  give: (target, file) => target.setInputFiles(file),
});

/** Goes on with Tab until that element has the focus. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeAttached();
  for (let presses = 0; presses < 900; presses++) {
    if (await target.evaluate((one) => one === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not come to ${target}.`);
}

const keyboard = (page: Page): Hand => ({
  async press(target) {
    await tabTo(page, target);
    const ticks = await target.evaluate((one) => /^(checkbox|radio)$/.test((one as HTMLInputElement).type));
    await page.keyboard.press(ticks ? 'Space' : 'Enter');
  },
  async type(target, text) {
    await tabTo(page, target);
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(text);
  },
  async choose(target, words) {
    await tabTo(page, target);
    const option = target.locator('option').filter({ hasText: words }).first();
    await page.keyboard.type((await option.textContent())!.trim());
    await expect(target.locator('option:checked')).toContainText(words);
  },
  async give(target, file) {
    await settled(page);
    await tabTo(page, target);
    const choosing = page.waitForEvent('filechooser', { timeout: 60_000 });
    await page.keyboard.press('Enter');
    await (await choosing).setFiles(file);
  },
});

/** To another page, by its name in the line of names. */
async function goTo(page: Page, hand: Hand, name: string): Promise<void> {
  await hand.press(
    page.getByRole('navigation', { name: 'Documents' }).getByRole('link', { name, exact: true }),
  );
  await expect(page.locator('main h1')).toBeVisible();
  await settled(page);
}

async function openWithMeasurements(page: Page, hand: Hand): Promise<void> {
  await page.goto('/#matching');
  await settled(page);
  await hand.press(page.locator('.design-menu summary'));
  await hand.give(page.locator('#design-file'), funnel);
  await expect(page.locator('.notice[data-topic="opened"]')).toContainText('is open');
  await hand.give(field(page, 'laser.beamImage').locator('input[type="file"]'), beam);
  await expect.poll(() => inputOf(page, 'laser.beamSource')).toBe('measured');
  await goTo(page, hand, 'Threshold');
  await hand.give(field(page, 'threshold.spotTable').locator('input[type="file"]'), spots);
  await expect(field(page, 'threshold.spotTable')).toContainText('rain-gauge-spots.csv');
  const outlier = page.locator('#block-spot-rows tr', { hasText: 'row 18' });
  await hand.choose(outlier.locator('select'), 'far off the others');
  await settled(page);
}

async function keepTwo(page: Page, hand: Hand): Promise<void> {
  await goTo(page, hand, 'What if');
  for (const name of ['As measured', 'The same again']) {
    await hand.type(page.locator('#alternative-name'), name);
    await hand.press(page.getByRole('button', { name: 'Keep the design as it stands' }));
    await expect(page.locator('.compare-row')).toContainText([name]);
  }
}

/** Step ratio 1.05 and a flat-top 30 to 32 µm wide, with one of three lenses. */
async function solve(page: Page, hand: Hand): Promise<void> {
  const tool = find(page);
  const nth = (label: string, place: number) =>
    tool.getByLabel(label, { exact: true }).filter({ visible: true }).nth(place);
  const list = (name: string, place: number) => tool.getByRole('combobox', { name, exact: true }).nth(place);
  await hand.type(nth('result', 0), 'step ratio');
  await hand.type(nth('value', 0), '1.05');
  await hand.press(tool.getByRole('button', { name: 'Want something else too' }));
  await hand.type(nth('result', 1), 'spot width');
  await hand.choose(list('wanted', 1), 'lies between');
  await hand.type(nth('value', 1), '30 µm');
  await hand.type(nth('and', 0), '32 µm');
  await hand.press(tool.getByRole('button', { name: 'Want something else too' }));
  await hand.type(nth('result', 2), 'dip on the axis');
  await hand.choose(list('wanted', 2), 'is at most');
  await hand.type(nth('value', 2), '5 %');
  await hand.type(nth('input', 0), 'magnification');
  await hand.press(tool.getByRole('button', { name: 'Let another input change' }));
  await hand.type(nth('input', 1), 'focal length');
  await hand.choose(list('may be', 1), 'only these values');
  await hand.type(nth('values, with semicolons between', 0), '100 mm; 125 mm; 160 mm');
  await hand.press(tool.getByRole('button', { name: 'Look for it' }));
  const answer = proposal(page);
  await expect(answer).toContainText('Found, after', { timeout: 60_000 });
  await hand.press(answer.getByRole('button', { name: 'Take this over' }));
  await expect(tool).toContainText('Taken over. Undo takes it back.');
  expect(await inputOf(page, 'lens.focalLength')).toBe(0.125);
  // The step over the beam as it was measured: `measure beam` gives 2.495 mm.
  expect(await inputOf(page, 'expander.magnification')).toBeCloseTo(8 / 2.4949281 / 1.05, 4);
}

async function writeUp(page: Page, hand: Hand): Promise<Record<string, Download>> {
  await goTo(page, hand, 'Write-up');
  await hand.type(page.locator('#own-words-purpose'), 'Even lines on a funnel, {spot.width} wide.');
  const rationale = page.getByRole('group', { name: 'Design rationale' });
  const saved: Record<string, Download> = {};
  for (const [ending, words] of Object.entries(kinds)) {
    const coming = page.waitForEvent('download', { timeout: 100_000 });
    await hand.press(rationale.getByRole('button', { name: words }));
    saved[ending] = await coming;
    expect(saved[ending].suggestedFilename()).toBe(`rain-gauge-funnel-design-rationale.${ending}`);
  }
  return saved;
}

const kinds = { html: 'HTML page', 'md.zip': 'Markdown with figures (zip)', docx: 'Word document (DOCX)' };

/** All three say the same of the design, and none lacks a figure. */
async function expectPapers(saved: Record<string, Download>): Promise<void> {
  const bytes = async (ending: string) => new Uint8Array(readFileSync(await saved[ending]!.path()));
  const html = strFromU8(await bytes('html'));
  const zip = unzipSync(await bytes('md.zip'));
  const docx = unzipSync(await bytes('docx'));
  const markdown = strFromU8(Object.entries(zip).find(([name]) => name.endsWith('.md'))![1]);
  const words = strFromU8(docx['word/document.xml']!).replace(/<[^>]+>/g, '');
  for (const text of [html.replace(/<[^>]+>/g, ''), markdown, words]) {
    expect(text).toMatch(/Even lines on a funnel, 30\.7\d?\s?\u202fµm wide/);
    expect(text).toContain('As measured');
    expect(text).toContain('rain-gauge-beam.png');
    expect(text).not.toMatch(/NaN|undefined|\[object/);
  }
  const figures = html.match(/<figcaption/g)!.length;
  expect(figures).toBeGreaterThan(5);
  expect(Object.keys(zip).filter((name) => name.endsWith('.svg'))).toHaveLength(figures);
  expect(Object.keys(docx).filter((name) => /^word\/media\/.*\.png$/.test(name))).toHaveLength(figures);
  expectOpened(await saved['docx']!.path(), figures);
}

/** LibreOffice makes a PDF of it that holds every figure. */
function expectOpened(docx: string, figures: number): void {
  const missing = ['soffice', 'pdfimages'].filter((name) => spawnSync(name, ['--version']).error);
  if (missing.length > 0 && process.env['STEPWELL_LIBREOFFICE'] !== 'required') return;
  expect(missing).toEqual([]);
  const folder = mkdtempSync(join(tmpdir(), 'stepwell-journey-'));
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
  execFileSync('soffice', [
    profile,
    '--headless',
    '--convert-to',
    'pdf:writer_pdf_Export',
    '--outdir',
    folder,
    docx,
  ]);
  const [name] = execFileSync('ls', [folder])
    .toString()
    .split('\n')
    .filter((one) => one.endsWith('.pdf'));
  const lines = execFileSync('pdfimages', ['-list', join(folder, name!)])
    .toString()
    .trim()
    .split('\n')
    .slice(2);
  expect(lines.filter((line) => line.trim().split(/\s+/)[2] === 'image')).toHaveLength(figures);
  rmSync(folder, { recursive: true });
}

for (const [words, width, height, handOf] of [
  ['the mouse', 1440, 900, mouse],
  ['the keyboard alone', 390, 844, keyboard],
] as const) {
  test.describe(`with ${words}, ${width} px wide`, () => {
    test.use({ viewport: { width, height }, actionTimeout: 20_000 });
    test.setTimeout(300_000);

    test('from a measured beam and a table of spots to a rationale in three kinds', async ({ page }) => {
      // Choosers are caught from the first on: a listener that comes just before the key may come too late.
      page.on('filechooser', () => {});
      const hand = handOf(page);
      await openWithMeasurements(page, hand);
      await keepTwo(page, hand);
      await solve(page, hand);
      await expectNoSidewaysScrolling(page);
      await expectPapers(await writeUp(page, hand));
    });
  });
}
