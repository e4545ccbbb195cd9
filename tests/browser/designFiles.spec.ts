import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { linkVersion } from '../../notebooks/keeping/designLink.ts';
import { cases } from '../cases.ts';
import { damagedDesigns } from '../notebooks/keeping/damagedDesigns.ts';
import { damagedLinks } from '../notebooks/keeping/damagedLinks.ts';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openMatching,
  settled,
  typeInto,
} from './stepwellPage.ts';

const path = (name: string) => fileURLToPath(new URL(`../../${name}`, import.meta.url));
const fixture = 'tests/fixtures/design-v2.json';
const menu = (page: Page) => page.locator('.design-menu');
const openMenu = (page: Page) => menu(page).locator('summary').click();
const undo = (page: Page) => page.getByRole('button', { name: 'Undo' });
const opened = (page: Page) => page.locator('.notice[data-topic="opened"]');
const message = (page: Page) => page.locator('.masthead-message');
/** What tells one design from another: numbers, name, and names of files. */
const design = (page: Page) =>
  page.evaluate(() => {
    const { inputs, name = '', kept } = window.stepwell.state();
    const fileName = (id: string) => (inputs[id] as { name: string } | null)?.name ?? null;
    return {
      name,
      beam: inputs['laser.beamDiameter'],
      step: inputs['plate.stepDiameter'],
      files: [fileName('laser.beamImage'), fileName('laser.causticTable')],
      kept: Object.keys(kept?.inputs ?? {}),
    };
  });
const first = { name: '', beam: 5e-3, step: 10e-3, files: [null, null], kept: [] };
const funnel = {
  name: 'Rain-gauge funnel',
  beam: 2.5e-3,
  step: 8e-3,
  files: ['beam.png', 'rain-gauge-caustic.csv'],
  kept: [],
};

/** Drops a file on a place of the page. */
async function drop(page: Page, selector: string, name: string, bytes: Uint8Array): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([fileName, content]) => {
      const data = new DataTransfer();
      data.items.add(new File([new Uint8Array(content)], fileName));
      return data;
    },
    [name, [...bytes]] as const,
  );
  await page.dispatchEvent(selector, 'drop', { dataTransfer: transfer });
}

for (const [width, height, colorScheme] of [
  [1440, 900, 'light'],
  [390, 844, 'dark'],
] as const) {
  test.describe(`a design file at ${width} × ${height}, ${colorScheme}`, () => {
    test.use({ viewport: { width, height }, colorScheme });

    test('is named, saved with its files and opened again, by keyboard', async ({ page }) => {
      await openMatching(page);
      await page.setInputFiles('#design-file', path(fixture));
      await expect(opened(page)).toContainText('‘design-v2.json’ is open.');
      expect(await design(page)).toEqual(funnel);
      await expect(menu(page).locator('summary')).toContainText('Rain-gauge funnel');
      await menu(page).locator('summary').focus();
      await page.keyboard.press('Enter');
      await page.keyboard.press('Tab');
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type('Funnel 2');
      await page.keyboard.press('Tab');
      await expect(menu(page).locator('textarea')).toBeFocused();
      await page.keyboard.press('Tab');
      const waiting = page.waitForEvent('download');
      await page.keyboard.press('Enter');
      const saved = await waiting;
      expect(saved.suggestedFilename()).toBe('funnel-2.json');
      await expect(menu(page).getByRole('status')).toHaveText('The design was saved as funnel-2.json.');
      expect(await findViolations(page, '.masthead')).toEqual([]);
      await expectNoSidewaysScrolling(page);
      await page.keyboard.press('Escape');
      await expect(menu(page).locator('.design-panel')).toBeHidden();

      await undo(page).click();
      expect(await design(page)).toEqual(funnel);
      await expect(opened(page)).toBeVisible();
      await undo(page).click();
      expect(await design(page)).toEqual(first);
      await expect(opened(page)).toBeHidden();
      await expect(undo(page)).toBeDisabled();
      await page.setInputFiles('#design-file', {
        name: 'a.json',
        mimeType: '',
        buffer: readFileSync(await saved.path()),
      });
      await expect(opened(page)).toContainText('‘a.json’ is open.');
      expect(await design(page)).toEqual({ ...funnel, name: 'Funnel 2' });
    });

    test('goes into a link and comes out of it as one step', async ({ page, context }) => {
      await context.grantPermissions(['clipboard-read', 'clipboard-write']);
      await openMatching(page);
      await page.setInputFiles('#design-file', path(fixture));
      await expect(opened(page)).toBeVisible();
      await openMenu(page);
      await menu(page).getByRole('button', { name: 'Copy link' }).click();
      await expect(menu(page).getByRole('status')).toHaveText('The link is copied.');
      expect(await findViolations(page, '.masthead')).toEqual([]);
      await expectNoSidewaysScrolling(page);
      const link = await page.evaluate(() => navigator.clipboard.readText());
      expect(link).toMatch(new RegExp(`^http://localhost:\\d+/#matching\\?design=${linkVersion}\\.`));
      expect(await menu(page).getByLabel('Link to this design').inputValue()).toBe(link);

      const other = await context.newPage();
      await other.goto(link);
      await settled(other);
      await expect(other.locator('main#matching')).toBeVisible();
      expect(await design(other)).toEqual(funnel);
      expect(new URL(other.url()).hash).toBe('#matching');
      await expect(opened(other)).toContainText('The design in the link is open.');
      await typeInto(other, 'laser.beamDiameter', '4 mm');
      await other.evaluate((hash) => {
        location.hash = hash;
      }, new URL(link).hash);
      await expect.poll(() => design(other)).toEqual(funnel);
      await undo(other).click();
      expect((await design(other)).beam).toBe(4e-3);
      await undo(other).click();
      await undo(other).click();
      expect(await design(other)).toEqual(first);
    });
  });
}

test('a broken link beside a tab with the design says what is wrong and shows what would be there without it', async ({
  page,
  context,
}) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  // Longer than a change waits before it is written.
  await page.waitForTimeout(600);
  const other = await context.newPage();
  await other.goto('/#matching?design=garbage');
  await settled(other);
  await expect(message(other)).toHaveText(/link is damaged.*The design that was open stays as it is\.$/);
  expect((await design(other)).beam).toBe(4e-3);
  await expect(other.locator('.notice[data-topic="design"]')).toContainText('is open in another tab too');
  await expect(other.locator('main#matching')).toBeVisible();
  expect(new URL(other.url()).hash).toBe('#matching');
});

test('a link tells its receiver what stayed behind', async ({ page }) => {
  await page.goto(`/#matching?design=${readFileSync(path('tests/fixtures/link-v2.txt'), 'utf8').trim()}`);
  await settled(page);
  await expect(opened(page)).toContainText('‘rain-gauge-beam.png’ (camera image of the raw beam)');
  await expect(opened(page)).toContainText('counts as typed here: beam propagation ratio M² 1.15');
  expect(await findViolations(page, '.notices')).toEqual([]);
  await undo(page).click();
  await expect(opened(page)).toBeHidden();
});

test('a file is opened wherever it is dropped; ids that are not known here are told of and kept', async ({
  page,
}) => {
  await openMatching(page);
  const content = JSON.parse(readFileSync(path(fixture), 'utf8'));
  content.inputs['later.thing'] = { value: 3, unit: 'm' };
  const bytes = Buffer.from(JSON.stringify(content));
  for (const place of ['main h1', '.field[data-input="laser.beamImage"] .field-drop']) {
    await drop(page, place, 'later.json', bytes);
    await expect(opened(page)).toContainText('does not know: later.thing. It is kept, and saved again.');
    expect(await design(page)).toEqual({ ...funnel, kept: ['later.thing'] });
    await undo(page).click();
    expect(await design(page)).toEqual(first);
  }
  await page.getByRole('button', { name: 'Redo' }).click();
  const waiting = page.waitForEvent('download');
  await page.keyboard.press('ControlOrMeta+S');
  const saved = JSON.parse(readFileSync(await (await waiting).path(), 'utf8'));
  expect(saved.inputs['later.thing']).toEqual({ value: 3, unit: 'm' });
});

test('the example, a file taken out and a name typed are one step each', async ({ page }) => {
  await openMatching(page);
  await page.setInputFiles('#design-file', path(fixture));
  await expect(opened(page)).toBeVisible();
  await page.getByRole('button', { name: 'Take out the camera image of the raw beam' }).click();
  expect((await design(page)).files).toEqual([null, 'rain-gauge-caustic.csv']);
  await openMenu(page);
  await menu(page).getByLabel('Name').fill('');
  await menu(page).getByLabel('Name').pressSequentially('Another');
  await page.keyboard.press('Escape');
  await page.goto('/#');
  await page.getByRole('button', { name: 'Show me the example' }).click();
  await settled(page);
  expect(await design(page)).toEqual(first);
  const steps = [
    { ...funnel, name: 'Another', files: [null, 'rain-gauge-caustic.csv'] },
    { ...funnel, files: [null, 'rain-gauge-caustic.csv'] },
    funnel,
    first,
  ];
  for (const step of steps) {
    await undo(page).click();
    expect(await design(page)).toEqual(step);
  }
});

test('damaged files and links are refused, and the design stays the very same', async ({ page }) => {
  test.setTimeout(300_000);
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await page.evaluate(() => {
    Object.assign(window, { before: window.stepwell.state() });
  });
  const expectSame = async (name: string, says: RegExp) => {
    await expect(message(page), name).toHaveText(says);
    await expect(message(page), name).toHaveText(/The design that was open stays as it is\.$/);
    const same = await page.evaluate(
      () => (window as unknown as { before: unknown }).before === window.stepwell.state(),
    );
    expect(same, name).toBe(true);
  };
  const every = <T>(list: readonly T[]) => list.filter((_, i) => i % cases(1, 7) === 0);
  for (const [name, bytes, says] of every(damagedDesigns)) {
    await page.setInputFiles('#design-file', { name: 'bad.json', mimeType: '', buffer: Buffer.from(bytes) });
    await expectSame(name, says);
  }
  for (const [name, text, says] of every(damagedLinks)) {
    await page.evaluate((link) => {
      location.hash = `matching?design=${link}`;
    }, text);
    // Engines may say differently what no JSON is.
    await expectSame(name, /no JSON/.test(name) ? /link is damaged/ : says);
  }
  expect(await findViolations(page, '.masthead')).toEqual([]);
});
