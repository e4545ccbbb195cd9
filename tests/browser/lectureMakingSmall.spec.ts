import { expect, type Page, test } from '@playwright/test';
import { halfWaveLecture } from '../../notebooks/lectures/halfWave.ts';
import { addTen, button, card, lecturesOf, newLecture, tenTitles } from './makingLectures.ts';
import { findSmallTargets } from './smallTargets.ts';
import { expectNoSidewaysScrolling, findViolations, openDocument, settled } from './stepwellPage.ts';

test.describe('at 390 × 844, by keyboard', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  /** Goes on with Tab until what has the focus is called that. */
  async function tabTo(page: Page, name: RegExp | string): Promise<void> {
    const focused = page.locator(':focus');
    for (let i = 0; i < 60; i++) {
      await page.keyboard.press('Tab');
      if ((await focused.count()) > 0 && (await nameOf(page)).match(name)) return;
    }
    throw new Error(`nothing called ${name} has the focus after 60 times Tab`);
  }
  const nameOf = (page: Page) =>
    page.evaluate(() => {
      const one = document.activeElement as HTMLInputElement;
      return one.getAttribute('aria-label') ?? one.labels?.[0]?.textContent ?? one.textContent ?? '';
    });

  test('a step is made, moved, asked about and timed', async ({ page }) => {
    await openDocument(page, 'lectures');
    await page.getByLabel('Title of a new lecture').focus();
    await page.keyboard.type('Short');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { name: 'Short' })).toBeFocused();
    await tabTo(page, 'Add an empty step');
    await page.keyboard.press('Enter');
    await page.keyboard.type('The ring');
    await tabTo(page, /^Minutes/);
    await page.keyboard.type('3');
    await tabTo(page, /^Search for an input/);
    await page.keyboard.type('plate.stop');
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowDown');
    await tabTo(page, 'Ask the room first');
    await page.keyboard.press('Enter');
    await page.keyboard.type('Ring or flat-top?');
    await tabTo(page, /^Notes/);
    await page.keyboard.type('Wait.');
    await tabTo(page, 'Add an empty step');
    await page.keyboard.press('Enter');
    await page.keyboard.type('Before it');
    await page.keyboard.press('Enter');
    await button(page, 'Up: Before it').focus();
    await page.keyboard.press('Enter');
    await expect(page.locator(':focus')).toHaveText('Close');
    const [first, second] = (await lecturesOf(page))[0]!.steps;
    expect(first).toMatchObject({ title: 'Before it' });
    expect(second).toMatchObject({
      title: 'The ring',
      minutes: 3,
      notes: 'Wait.',
      ask: { question: 'Ring or flat-top?', options: [], from: 0 },
    });
    expect(second!.sets).toHaveProperty(['plate.stop']);
    await expectNoSidewaysScrolling(page);
  });

  for (const colorScheme of ['light', 'dark'] as const)
    test(`nothing for axe to find, nothing too small, nothing beyond the side, ${colorScheme}`, async ({
      page,
    }) => {
      await page.emulateMedia({ colorScheme });
      await openDocument(page, 'lectures');
      await newLecture(page, 'Half a wave');
      await addTen(page);
      await expectNoSidewaysScrolling(page);
      await button(page, `Change: ${tenTitles[1]}`).click();
      await button(page, 'Ask the room first').click();
      await settled(page);
      expect(await findViolations(page)).toEqual([]);
      expect(await findSmallTargets(page)).toEqual([]);
      await expectNoSidewaysScrolling(page);
      await button(page, 'All lectures').click();
      await card(page, 'Half a wave').getByText('Its steps', { exact: true }).click();
      expect(await findViolations(page)).toEqual([]);
      await expectNoSidewaysScrolling(page);
    });
});

test('the link to the lecture that comes with the program says that everybody can open its notes', async ({
  page,
}) => {
  const { title } = halfWaveLecture;
  await openDocument(page, 'lectures');
  await button(page, `Copy link for students: ${title}`).click();
  await expect(card(page, title).getByRole('status')).toContainText(
    'so does the lecturer’s page with its answers: everybody can open it.',
  );
  const link = await page.getByRole('textbox', { name: 'Link for students' }).inputValue();
  expect(link).toMatch(/#lectures\/half-a-wave$/);
  await settled(page);
  expect(await findViolations(page)).toEqual([]);
});
