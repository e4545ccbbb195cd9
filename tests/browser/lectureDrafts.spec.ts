import { expect, test } from '@playwright/test';
import { button, lecturesOf, newLecture, steps } from './makingLectures.ts';
import { openDocument } from './stepwellPage.ts';

test.use({ viewport: { width: 1440, height: 900 } });

test('what is typed into a step and not left yet, and the parts ticked, are there again after a reload', async ({
  page,
}) => {
  await openDocument(page, 'lectures');
  await newLecture(page, 'Half a wave');
  await page.getByLabel('Page they come from').selectOption({ label: 'Through the focus' });
  const ticked = page.getByRole('checkbox', { name: 'Chart: Fluence through the focus', exact: true });
  await ticked.check();
  await button(page, 'Add an empty step').click();
  await expect(steps(page)).toHaveCount(1);
  const notes = page.getByLabel('Notes for yourself');
  await notes.pressSequentially('Hold the plate up, and wa');
  // The history of the design is written within a second.
  await page.waitForTimeout(1500);
  await page.reload();
  await expect(notes).toHaveValue('Hold the plate up, and wa');
  await expect(ticked).toBeChecked();
  expect((await lecturesOf(page))[0]!.steps[0]!.notes).toBeUndefined();
  await notes.focus();
  await page.keyboard.press('End');
  await page.keyboard.type('it');
  await page.keyboard.press('Tab');
  expect((await lecturesOf(page))[0]!.steps[0]!.notes).toBe('Hold the plate up, and wait');
});
