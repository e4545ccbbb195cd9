import { expect, test } from '@playwright/test';
import { trialLecture } from '../trialLecture.ts';
import { curves, openLecture, title, upToDate } from './givenLecture.ts';
import { findViolations, typeInto } from './stepwellPage.ts';

const { steps } = trialLecture;

test('a page that is loaded again in the middle of a lecture keeps place, answers, marks, time and values', async ({
  page,
}) => {
  await openLecture(page, 2);
  const [beside] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')]);
  await page.bringToFront();
  await page.keyboard.press('2');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(title(page)).toHaveText(steps[2]!.title);
  await typeInto(page, 'laser.beamDiameter', '5 mm');
  const width = page.locator('main.giving .value[data-quantity="laser.beamDiameter"]');
  await expect(width).toHaveText(/^5\smm$/);
  await expect(beside.locator('.lecturer-spent')).not.toHaveText('0:00');

  await page.reload();
  await expect(title(page)).toHaveText(steps[2]!.title);
  await expect(page.locator('.giving-news')).toHaveText(
    'The page was loaded again, and the lecture is as it was: press N for the lecturer’s page again.',
  );
  await expect(width).toHaveText(/^5\smm$/);
  await title(page).focus();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(width).toHaveText(/^6\smm$/);
  await page.keyboard.press('PageUp');
  await expect(page.locator(curves)).not.toHaveCount(0);
  await expect(page.getByRole('button', { name: '2 It becomes darker' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  const [again] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')]);
  await expect(again.locator('.lecturer-room')).toHaveText('The room says: It becomes darker');
  await expect(again.locator('.lecturer-spent')).not.toHaveText(/^0:0[0-1]$/);
});

test('a lecture that was left goes on where it was left, or begins anew', async ({ page }) => {
  await openLecture(page, 2);
  await page.keyboard.press('ArrowRight');
  await expect(page.locator(curves)).not.toHaveCount(0);
  await page.keyboard.press('Escape');
  const on = page.getByRole('link', { name: `Go on at step 2: ${trialLecture.title}` });
  await expect(on).toBeVisible();
  expect(await findViolations(page, '.lecture-list')).toEqual([]);
  await on.click();
  await expect(page.locator(curves)).not.toHaveCount(0);
  await page.keyboard.press('Escape');
  await page.getByRole('link', { name: `Give it from the beginning: ${trialLecture.title}` }).click();
  await expect(title(page)).toHaveText(steps[0]!.title);
  await page.keyboard.press('ArrowRight');
  await expect(title(page)).toHaveText(steps[1]!.title);
  await upToDate(page);
  await expect(page.locator(curves)).toHaveCount(0);
});

test('undo in a field with nothing half typed brings field and slide back together', async ({ page }) => {
  await openLecture(page, 3);
  const field = page.locator('.field[data-input="laser.beamDiameter"] input[type="text"]');
  const width = page.locator('main.giving .value[data-quantity="laser.beamDiameter"]');
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('5 mm');
  await page.keyboard.press('Enter');
  await expect(width).toHaveText(/^5\smm$/);
  await expect(field).toBeFocused();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(width).toHaveText(/^6\smm$/);
  await expect(field).toHaveValue(/^6\smm$/);
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(width).toHaveText(/^5\smm$/);
  await expect(field).toHaveValue(/^5\smm$/);

  // Half typed: the text is the field’s own, and its letters are text.
  await page.keyboard.press('End');
  await page.keyboard.type('r');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(width).toHaveText(/^5\smm$/);
  await expect(field).toHaveValue(/^5\smm$/);
});
