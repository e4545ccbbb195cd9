import { expect, type Page, test } from '@playwright/test';
import { changeRecord, crash } from './killing.ts';
import {
  chooseElement,
  findViolations,
  openMatching,
  readInputs,
  settled,
  typeInto,
} from './stepwellPage.ts';

const notice = (page: Page, topic: string) => page.locator(`.notice[data-topic="${topic}"]`);
const diameter = async (page: Page) => (await readInputs(page))['laser.beamDiameter'];
const undo = (page: Page) => page.getByRole('button', { name: 'Undo' });
/** Longer than a key waits before it is written. */
const written = (page: Page) => page.waitForTimeout(600);

test('what was typed and not taken comes back so, and only Enter or leaving the field takes it', async ({
  page,
  context,
}) => {
  const field = (tab: Page) => tab.locator('.field[data-input="plate.stepDiameter"]');
  const text = (tab: Page) => field(tab).locator('input[type="text"]');
  const step = async (tab: Page) => (await readInputs(tab))['plate.stepDiameter'];
  const killed = async (tab: Page) => {
    await written(tab);
    await crash(tab);
    await tab.close();
    const next = await context.newPage();
    await openMatching(next);
    return next;
  };
  await openMatching(page);
  await chooseElement(page, 'plate');
  await text(page).focus();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('9.4');
  let tab = await killed(page);
  await expect(text(tab)).toBeFocused();
  await expect(text(tab)).toBeInViewport();
  await expect(text(tab)).toHaveValue('9.4');
  await expect(field(tab)).toContainText('Not taken yet: Enter takes it, Escape brings back 10\u202fmm.');
  await expect(notice(tab, 'design')).toContainText(
    'Your last design is open again. What you were typing, ‘9.4’ for step diameter, stands in its field again and does not count yet',
  );
  expect(await findViolations(tab, '.path-inputs')).toEqual([]);
  expect(await step(tab)).toBe(10e-3);
  await expect(undo(tab)).toBeDisabled();

  await tab.keyboard.type('5');
  tab = await killed(tab);
  await expect(text(tab)).toHaveValue('9.45');
  await tab.keyboard.press('Enter');
  expect(await step(tab)).toBe(9.45e-3);
  await expect(notice(tab, 'design')).toBeHidden();

  await tab.keyboard.press('ControlOrMeta+A');
  await tab.keyboard.type('7');
  tab = await killed(tab);
  await tab.keyboard.press('Escape');
  await expect(notice(tab, 'design')).toHaveText(/^Your last design is open again\. Start afresh ?Close$/);
  await expect(text(tab)).toHaveValue('9.45\u202fmm');
  tab = await killed(tab);
  await expect(text(tab)).toHaveCount(0);
  expect(await step(tab)).toBe(9.45e-3);
});

test('starting afresh drops what was typed before, and takes nothing of it', async ({ page }) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('3');
  await written(page);
  await page.reload();
  await settled(page);
  await page.getByRole('button', { name: 'Start afresh' }).click();
  const text = page.locator('.field[data-input="laser.beamDiameter"] input[type="text"]').first();
  await expect(text).toHaveValue('5\u202fmm');
  await undo(page).click();
  expect(await diameter(page)).toBe(4e-3);
});

test('a tab beside one where somebody types does not take what is typed there', async ({ page, context }) => {
  await openMatching(page);
  const text = (tab: Page) =>
    tab.locator('.field[data-input="laser.beamDiameter"] input[type="text"]').first();
  await text(page).focus();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('4.5');
  await written(page);
  const other = await context.newPage();
  await openMatching(other);
  await expect(notice(other, 'design')).toContainText('is open in another tab too');
  await expect(text(other)).toHaveValue('5\u202fmm');
  await crash(page);
  await page.close();
  await expect(text(other)).toHaveValue('4.5');
  await expect(notice(other, 'design')).toContainText('What you were typing, ‘4.5’ for raw beam diameter');
  expect(await diameter(other)).toBe(5e-3);
});

test('what is typed of something that is no input any more is dropped without a word', async ({ page }) => {
  await openMatching(page);
  await typeInto(page, 'laser.beamDiameter', '4 mm');
  await written(page);
  const strange = [{ input: 'later.thing', text: '4', unit: 'm' }, { input: 'plate.stop', text: '4' }, 7];
  await changeRecord(page, ['drafts'], strange);
  await page.reload();
  await settled(page);
  await expect(notice(page, 'design')).toHaveText(/^Your last design is open again\. Start afresh ?Close$/);
  await expect(notice(page, 'trouble')).toHaveCount(0);
  expect(await diameter(page)).toBe(4e-3);
});
