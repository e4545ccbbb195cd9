import { expect, test } from '@playwright/test';
import { trialLecture } from '../trialLecture.ts';
import { curves, dipShown, openLecture, shownOf, title, upToDate } from './givenLecture.ts';
import { findViolations, readInputs, typeInto } from './stepwellPage.ts';

const { steps } = trialLecture;

test('a lecture is given from end to end by keyboard, with the lecturer’s page beside it', async ({
  page,
}) => {
  await openLecture(page);
  const before = await readInputs(page);
  await expect(page.locator('.masthead')).toBeHidden();
  const [beside] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')]);
  await expect(beside.getByRole('heading', { level: 1 })).toHaveText(steps[0]!.title);
  await expect(beside.locator('.lecturer-notes')).toHaveText(
    `Welcome them. Today’s spot is ${shownOf('spot.width', {})} wide, and nobody knows yet why.`,
  );
  await expect(beside.locator('.lecturer-next')).toHaveText(`Next: ${steps[1]!.title}`);
  await expect(beside.locator('.lecturer-asks')).toHaveText(
    'It asks: What becomes of the middle of the spot?',
  );
  await page.bringToFront();

  await page.keyboard.press('ArrowRight');
  await expect(title(page)).toHaveText(steps[1]!.title);
  await expect(title(page)).toBeFocused();
  await expect(page).toHaveURL(/#lectures\/lecture7\/2$/);
  await upToDate(page);
  await expect(page.locator('main.giving .figure-title')).toHaveText('Fluence across the spot');
  await expect(page.locator('main.giving .figure-svg')).toBeVisible();
  await expect(page.locator(curves)).toHaveCount(0);
  await expect(dipShown(page)).toBeHidden();
  await page.keyboard.press('2');
  await expect(page.getByRole('button', { name: '2 It becomes darker' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await expect(beside.locator('.lecturer-room')).toHaveText('The room says: It becomes darker');

  await page.keyboard.press(' ');
  await expect(page.locator(curves)).not.toHaveCount(0);
  await expect(dipShown(page)).toHaveText(shownOf('spot.dip', {}));
  await expect(beside.locator('.lecturer-said')).toHaveText('The room sees the answer.');

  for (const [i, key] of [
    'PageDown',
    'Enter',
    'PageDown',
    'ArrowRight',
    ' ',
    'PageDown',
    'PageDown',
  ].entries()) {
    await page.keyboard.press(key);
    const place = [2, 3, 3, 4, 4, 5, 6][i]!;
    await expect(title(page)).toHaveText(steps[place]!.title);
    await upToDate(page);
  }
  await expect(beside.locator('.lecturer-next')).toHaveText('This is the last step.');
  await expect(beside.locator('.lecturer-spent')).toHaveText(/^\d+:\d\d$/);

  // The same keys in the second window.
  await beside.keyboard.press('Home');
  await expect(title(page)).toHaveText(steps[0]!.title);
  await beside.getByRole('button', { name: 'Next' }).click();
  await expect(title(page)).toHaveText(steps[1]!.title);
  await expect(page.locator(curves)).not.toHaveCount(0);
  await beside.close();
  await page.keyboard.press('End');
  await page.keyboard.press('Escape');
  await expect(page.locator('main#lectures')).toBeVisible();
  await expect(page.locator('.masthead')).toBeVisible();
  expect(await readInputs(page)).toEqual(before);
});

test('a change is taken back without losing place, answer or time; each step is as it was left', async ({
  page,
}) => {
  await openLecture(page, 2);
  await page.keyboard.press('1');
  await page.keyboard.press('ArrowRight');
  await expect(page.locator(curves)).not.toHaveCount(0);
  await page.keyboard.press('ArrowRight');
  await expect(title(page)).toHaveText(steps[2]!.title);
  const width = page.locator('main.giving .value[data-quantity="laser.beamDiameter"]');
  await expect(width).toHaveText(/^6\smm$/);
  await typeInto(page, 'laser.beamDiameter', '5 mm');
  await expect(width).toHaveText(/^5\smm$/);
  await page.locator('main.giving .field-slider').last().focus();
  await page.keyboard.press('ArrowRight');
  await expect(title(page)).toHaveText(steps[2]!.title);
  const focal = page.locator('.field[data-input="lens.focalLength"] input[type="text"]');
  const moved = await focal.inputValue();
  expect(moved).not.toBe('100\u202fmm');

  // Away and back: as it was left; the question is answered still.
  await title(page).focus();
  await page.keyboard.press('PageUp');
  await expect(page.locator(curves)).not.toHaveCount(0);
  await expect(page.getByRole('button', { name: '1 It becomes brighter' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await expect(dipShown(page)).toHaveText(shownOf('spot.dip', {}));
  await page.keyboard.press('PageDown');
  await expect(width).toHaveText(/^5\smm$/);
  await expect(focal).toHaveValue(moved);

  await page.keyboard.press('ControlOrMeta+z');
  await expect(width).toHaveText(/^5\smm$/);
  await expect(focal).not.toHaveValue(moved);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(width).toHaveText(/^6\smm$/);
  await expect(page.locator('.giving-news')).toHaveText('Taken back: raw beam diameter.');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator('.giving-news')).toHaveText('Nothing was moved in this step.');
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(width).toHaveText(/^5\smm$/);
  await page.keyboard.press('r');
  await expect(width).toHaveText(/^6\smm$/);
  await expect(title(page)).toHaveText(steps[2]!.title);

  // Who leaves by mistake comes back to everything.
  await page.keyboard.press('Escape');
  await expect(page.locator('main#lectures')).toBeVisible();
  await page.goBack();
  await expect(title(page)).toHaveText(steps[2]!.title);
  await page.keyboard.press('PageUp');
  await expect(page.locator(curves)).not.toHaveCount(0);
});

test('keys stay with what has the focus; the screen goes blank and comes back; help lists the keys', async ({
  page,
}) => {
  await openLecture(page, 3);
  const field = page.locator('.field[data-input="laser.beamDiameter"] input[type="text"]');
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('5.5 mm');
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  await expect(field).toHaveValue('5.5 mm');
  await expect(title(page)).toHaveText(steps[2]!.title);
  await page.keyboard.press('Enter');
  await expect(title(page)).toHaveText(steps[2]!.title);
  await title(page).focus();
  for (const key of ['b', '.']) {
    await page.keyboard.press(key);
    await expect(page.locator('.giving-blank')).toBeVisible();
    await page.keyboard.press('PageDown');
    await expect(page.locator('.giving-blank')).toBeHidden();
    await expect(title(page)).toHaveText(steps[2]!.title);
  }
  await page.keyboard.press('?');
  const help = page.getByRole('region', { name: 'Keys' });
  await expect(help).toContainText('Page Down');
  expect(await findViolations(page, 'main.giving')).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(help).toBeHidden();
  await page.locator('main.giving .value').first().click();
  await expect(page.locator('main.giving .trace')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.locator('main.giving .trace')).toBeHidden();
  await expect(title(page)).toHaveText(steps[2]!.title);
});

test('Escape leaves a field first, then the lecture', async ({ page }) => {
  await page.goto('/#lectures/half-a-wave/4');
  await upToDate(page);
  const field = page.locator('.field[data-input="expander.magnification"] input[type="text"]');
  await field.click();
  await page.keyboard.press('Escape');
  await expect(field).not.toBeFocused();
  await expect(title(page)).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(page).toHaveURL(/half-a-wave\/5$/);
  await page.keyboard.press('Escape');
  await expect(page).toHaveURL(/#lectures$/);
});

test('where windows are held back, the notes stand below the step', async ({ page }) => {
  await page.addInitScript(() => {
    window.open = () => null;
  });
  await openLecture(page);
  await page.getByRole('button', { name: 'Lecturer’s page' }).click();
  await expect(page.locator('.giving-news')).toContainText('The browser holds the second window back.');
  const notes = page.getByRole('region', { name: 'Lecturer’s page' });
  await expect(notes).toContainText('nobody knows yet');
  expect(await findViolations(page)).toEqual([]);
  await notes.getByRole('button', { name: 'Next' }).click();
  await expect(notes).toContainText('Wait until every hand is up.');
  await title(page).focus();
  await page.keyboard.press('n');
  await expect(notes).toBeHidden();
  await expect(title(page)).toHaveText(steps[1]!.title);
});
