import { expect, test } from '@playwright/test';
import {
  addTen,
  button,
  card,
  chosen,
  lecturesOf,
  newLecture,
  steps,
  tenTitles,
  titlesOf,
  undo,
} from './makingLectures.ts';
import { findViolations, openDocument, settled } from './stepwellPage.ts';

test.describe('at 1440 × 900, by mouse', () => {
  test.use({ viewport: { width: 1440, height: 900 }, permissions: ['clipboard-read', 'clipboard-write'] });

  test('ten steps from three pages are composed, shared by link and opened elsewhere', async ({
    page,
    browser,
  }) => {
    await openDocument(page, 'lectures');
    await newLecture(page, 'Half a wave');
    await addTen(page);
    expect(await titlesOf(page)).toEqual(tenTitles);

    // The third before the first, by its bar.
    await steps(page)
      .nth(2)
      .locator('.own-bar')
      .dragTo(steps(page).nth(0), { targetPosition: { x: 40, y: 3 } });
    expect((await titlesOf(page)).slice(0, 3)).toEqual([tenTitles[2], tenTitles[0], tenTitles[1]]);
    await undo(page).click();
    expect(await titlesOf(page)).toEqual(tenTitles);

    await button(page, `Change: ${tenTitles[1]}`).click();
    await page.getByLabel('Title of this step').fill('What the spot looks like');
    await page.getByLabel('Minutes meant for it').fill('4');
    await page.getByRole('combobox', { name: 'Search for an input to set' }).fill('laser.beamDiameter');
    await page.getByRole('option').first().click();
    await page.getByLabel('raw beam diameter', { exact: true }).fill('6 mm');
    await button(page, 'Ask the room first').click();
    await page.getByLabel('Question', { exact: true }).fill('What becomes of the **middle**?');
    await page.getByLabel('Answers to choose among').fill('It rises\nIt sinks');
    await page.getByLabel('Notes for yourself').fill('Hold the plate up.');
    await page.locator('.own-kinds').getByRole('button', { name: 'Numbers' }).click();
    await page.getByRole('combobox', { name: 'Search for a number to show' }).fill('spot.width');
    await page.keyboard.press('Enter');
    await button(page, 'Add it').click();
    const second = (await lecturesOf(page))[0]!.steps[1]!;
    expect(second).toEqual({
      id: 'step2',
      title: 'What the spot looks like',
      minutes: 4,
      notes: 'Hold the plate up.',
      sets: { 'laser.beamDiameter': 6e-3 },
      ask: { question: 'What becomes of the **middle**?', options: ['It rises', 'It sinks'], from: 0 },
      pieces: [
        { kind: 'block', document: 'matching', block: 'profile' },
        { kind: 'values', ids: ['spot.width'] },
      ],
    });

    await button(page, 'All lectures').click();
    await expect(card(page, 'Half a wave')).toContainText('10 steps, 4 minutes for 1 of them.');
    await button(page, 'Copy link for students: Half a wave').click();
    await expect(card(page, 'Half a wave')).toContainText('The link is copied.');
    const link = await page.getByRole('textbox', { name: 'Link for students' }).inputValue();
    expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(link);
    expect(link).toMatch(/#lectures\/lecture1\?design=5\./);

    const context = await browser.newContext();
    const students = await context.newPage();
    await students.goto(link);
    await settled(students);
    await expect(students.getByRole('heading', { name: 'Half a wave', exact: true })).toBeFocused();
    const { notes: _, ...told } = second;
    const received = (await lecturesOf(students))[0]!.steps;
    expect(received).toHaveLength(10);
    expect(received[1]).toEqual(told);
    await card(students, 'Half a wave').getByRole('link', { name: 'What the spot looks like' }).click();
    await expect(students.getByRole('heading', { name: 'What the spot looks like' })).toBeVisible();
    expect(new URL(students.url()).hash).toBe('#lectures/lecture1/2');
    await context.close();
  });

  test('a page of the program, or one of one’s own, becomes steps; each act is one step back', async ({
    page,
  }) => {
    await openDocument(page, 'lectures');
    await page.getByLabel('It begins with').selectOption({ label: 'Matching beam and plate' });
    await button(page, 'New lecture').click();
    await expect(page.getByRole('heading', { name: 'Matching beam and plate' })).toBeVisible();
    const whole = await titlesOf(page);
    expect(whole.length).toBeGreaterThan(8);
    await button(page, `Take out: ${whole[0]}`).click();
    await button(page, `Duplicate: ${whole[1]}`).click();
    expect(await titlesOf(page)).toEqual([whole[1], ...whole.slice(1)]);
    await undo(page).click();
    await undo(page).click();
    expect(await titlesOf(page)).toEqual(whole);
    await button(page, 'Take the lecture out').click();
    await expect(page.locator('.lectures')).toContainText('Undo brings it back.');
    expect(await lecturesOf(page)).toEqual([]);
    await undo(page).click();
    await expect(card(page, 'Matching beam and plate')).toBeVisible();
    await undo(page).click();
    expect(await lecturesOf(page)).toEqual([]);
  });

  test('steps are added below another, as one of several parts, and empty', async ({ page }) => {
    await openDocument(page, 'lectures');
    await newLecture(page, 'Short');
    await button(page, 'Add an empty step').click();
    await page.getByLabel('Title of this step').fill('First');
    await button(page, 'Close: New step').click();
    await button(page, 'Add an empty step').click();
    await page.getByLabel('Title of this step').fill('Last');
    await page.keyboard.press('Enter');
    await button(page, 'Add below: First').click();
    const [source, labels] = chosen[0]!;
    await page.locator('.lecture-from').evaluate((details: HTMLDetailsElement) => {
      details.open = true;
    });
    await page.getByLabel('Page they come from').selectOption({ label: source });
    for (const label of labels.slice(0, 2))
      await page.getByRole('checkbox', { name: label, exact: true }).check();
    await button(page, 'Add all as one step').click();
    expect(await titlesOf(page)).toEqual(['First', tenTitles[0], 'Last']);
    expect((await lecturesOf(page))[0]!.steps[1]!.pieces).toHaveLength(2);
  });

  test('what is written stays through undo and a walk to another page', async ({ page }) => {
    await openDocument(page, 'lectures');
    await newLecture(page, 'Short');
    await button(page, 'Add an empty step').click();
    await page.getByLabel('Minutes meant for it').fill('soon');
    await page.keyboard.press('Tab');
    await expect(page.locator('.lectures')).toContainText('‘soon’ is no time for a step; type minutes');
    await page.locator('.own-kinds').getByRole('button', { name: 'Text', exact: true }).click();
    await page.keyboard.type('Half a sen');
    const text = page.locator('.own-editing form').getByLabel('Text', { exact: true });
    await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.15 }));
    await undo(page).click();
    await expect(text).toHaveValue('Half a sen');
    await page.evaluate(() => {
      window.location.hash = 'matching';
    });
    await expect(page.locator('main#matching')).toBeVisible();
    await page.evaluate(() => {
      window.location.hash = 'lectures';
    });
    await expect(text).toHaveValue('Half a sen');
    await expect(page.getByLabel('Minutes meant for it')).toHaveValue('soon');
    // The step goes and comes back, and what was written for it too.
    await undo(page).click();
    await expect(steps(page)).toHaveCount(0);
    await button(page, 'Redo').click();
    await expect(text).toHaveValue('Half a sen');
    expect((await lecturesOf(page))[0]!.steps[0]).toEqual({ id: 'step1', title: 'New step', pieces: [] });
  });

  for (const scheme of ['light', 'dark'] as const)
    test(`nothing for axe to find in the list and while a step is open, ${scheme}`, async ({ page }) => {
      await page.emulateMedia({ colorScheme: scheme });
      await openDocument(page, 'lectures');
      await newLecture(page, 'Half a wave');
      await addTen(page);
      await button(page, `Change: ${tenTitles[1]}`).click();
      await page.getByRole('combobox', { name: 'Search for an input to set' }).fill('laser.beamDiameter');
      await page.keyboard.press('Enter');
      await button(page, 'Ask the room first').click();
      await settled(page);
      expect(await findViolations(page)).toEqual([]);
      await button(page, 'All lectures').click();
      const own = card(page, 'Half a wave');
      for (const name of ['Its steps', 'Printed copy']) await own.getByText(name, { exact: true }).click();
      await button(page, 'Copy link for students: Half a wave').click();
      expect(await findViolations(page)).toEqual([]);
    });
});
