import { expect, test } from '@playwright/test';
import { lessons } from '../../notebooks/lessons/lessons.ts';
import { lessonState } from '../../notebooks/lessons/progressWords.ts';
import { storageKey } from '../../notebooks/page/lessons/progressStore.ts';
import {
  answerByKeys,
  answerByMouse,
  currentTask,
  firstWords,
  lastTask,
  lessonSettled,
  openLesson,
  tabTo,
  wrongAnswer,
} from './lessonSteps.ts';
import { findSmallTargets } from './smallTargets.ts';
import { expectNoSidewaysScrolling, findViolations, openDocument, settled } from './stepwellPage.ts';

const lessonOf = (id: string) => lessons.find((one) => one.id === id)!;
const beamSize = lessonOf('beam-size');
const thresholdPlot = lessonOf('threshold-plot');

/** A page that is looked at: its width, and by day or by night. */
type Look = readonly [width: number, colorScheme: 'light' | 'dark'];
const looks: readonly Look[] = [
  [390, 'light'],
  [1440, 'dark'],
  [1440, 'light'],
  [390, 'dark'],
];

test.describe('by mouse at 1440 × 900', () => {
  test('a lesson from the list to its end: a reason for a wrong answer, its own design, other values again', async ({
    page,
  }) => {
    const drawn = await openLesson(page, beamSize, 4);
    const opened = await page.evaluate(() => window.stepwell.state());
    await page.getByRole('link', { name: 'All lessons' }).click();
    const row = page.locator('.lesson-list li').filter({ hasText: beamSize.title });
    await expect(row).toContainText('opened, nothing answered yet');
    await row.getByRole('link').click();
    await expect(page.locator('.lesson-own')).toContainText('stays as it is');
    for (const [i, task] of beamSize.tasks.entries()) {
      const place = currentTask(page);
      await expect(place.locator('h3')).toContainText(`${i + 1} of ${beamSize.tasks.length}`);
      if (i === 0) {
        await expect(place.locator('.place-handle')).not.toHaveAttribute('data-put');
        // From the mark Tab leads on to the answer, past no files.
        await place.getByRole('slider').press('Tab');
        await expect(place.getByRole('button', { name: 'Answer here' })).toBeFocused();
        await place.getByRole('button', { name: 'Answer here' }).click();
        await expect(place.locator('.lesson-reply')).toContainText('Put your mark on the chart first.');
        const wrong = drawn.at(task.id).errors[0]!;
        await answerByMouse(page, drawn, task, wrong.answer);
        await expect(place.locator('.lesson-reply')).toContainText(firstWords(wrong.error));
        await expect(place.getByRole('button', { name: 'Show me' })).toBeHidden();
      }
      await expect(place.locator('.lesson-explanation')).toBeHidden();
      await answerByMouse(page, drawn, task, drawn.at(task.id).right);
      await expect(place.locator('.lesson-reply')).toContainText(/^Right/);
      await expect(place.locator('.lesson-explanation')).toBeVisible();
      await expect(place.locator('form')).toBeHidden();
      await lessonSettled(page);
      if (i < beamSize.tasks.length - 1) await page.getByRole('button', { name: 'Go on' }).click();
    }
    await expect(page.locator('.lesson-summary')).toContainText(
      '3 of 4 right at once, the other one after a hint.',
    );
    // A number of the lesson opens over its own design.
    const beam = page.locator('.lesson-task').first().locator('.lesson-explanation .value');
    const shown = await beam.textContent();
    await beam.click();
    await expect(page.locator('.trace:visible .trace-value')).toContainText(shown!);
    await expect(page.locator('.trace:visible')).not.toContainText('Require something');
    await page.locator('.caution .value').first().click();
    await expect(page.locator('.trace:visible')).toHaveCount(1);
    await page.keyboard.press('Escape');
    expect(await page.evaluate(() => window.stepwell.state())).toEqual(opened);
    await page.getByRole('button', { name: 'Take it again with other values' }).click();
    await expect(page.locator('.lesson-task')).toHaveCount(1);
    const kept = await page.evaluate((key) => JSON.parse(localStorage.getItem(key)!), storageKey);
    expect(kept.runs['beam-size'].seed).not.toBe(4);
    expect(kept.runs['beam-size'].before).toBe(1);
    await expect(currentTask(page).locator('h3')).toBeFocused();
  });

  test('reload in the middle: seed, answers and the last reason are there again; all of it can be forgotten', async ({
    page,
  }) => {
    const drawn = await openLesson(page, beamSize, 9);
    const [first, second] = beamSize.tasks;
    await answerByMouse(page, drawn, first!, drawn.at(first!.id).right);
    await page.getByRole('button', { name: 'Go on' }).click();
    const { error, answer } = drawn.at(second!.id).errors[0]!;
    await answerByMouse(page, drawn, second!, answer);
    await expect(currentTask(page).locator('.lesson-reply')).toContainText(firstWords(error));
    await lessonSettled(page);
    const question = await currentTask(page).locator('.lesson-question').textContent();
    await page.reload();
    await expect(page.locator('.lesson-task')).toHaveCount(2);
    await expect(page.locator('.lesson-task').first().locator('.lesson-reply')).toContainText(/^Right/);
    await expect(currentTask(page).locator('.lesson-reply')).toContainText(firstWords(error));
    await expect(currentTask(page).locator('.lesson-reply')).toContainText('Read as ');
    await expect(currentTask(page).getByLabel('Your answer')).not.toHaveValue('');
    await lessonSettled(page);
    await expect(currentTask(page).locator('h3')).toBeInViewport();
    expect(await currentTask(page).locator('.lesson-question').textContent()).toBe(question);
    await answerByMouse(page, drawn, second!, drawn.at(second!.id).right);
    await expect(currentTask(page).locator('.lesson-reply')).toContainText(/^Right/);
    await page.getByRole('link', { name: 'All lessons' }).click();
    const row = page.locator('.lesson-list li').filter({ hasText: beamSize.title });
    await expect(row).toContainText('begun, 2 of 4 answered');
    await page.getByRole('button', { name: 'Forget what I have done' }).click();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await expect(row).toContainText('begun, 2 of 4 answered');
    await page.getByRole('button', { name: 'Forget what I have done' }).click();
    await page.getByRole('button', { name: 'Forget it', exact: true }).click();
    await expect(row).toContainText(lessonState(beamSize, undefined));
    expect(await page.evaluate((key) => localStorage.getItem(key), storageKey)).toBeNull();
  });

  test('two people get different values; a lesson that is not there leads to the list', async ({
    browser,
  }) => {
    const seeds: number[] = [];
    for (let i = 0; i < 2; i++) {
      const page = await (await browser.newContext()).newPage();
      await openDocument(page, 'lessons');
      await page.getByRole('link', { name: beamSize.title }).click();
      await expect(currentTask(page)).toBeVisible();
      const kept = await page.evaluate((key) => JSON.parse(localStorage.getItem(key)!), storageKey);
      seeds.push(kept.runs['beam-size'].seed);
      if (i === 1) {
        await page.goto('/#lessons/nothing-like-it');
        await expect(page.locator('main')).toContainText('There is no lesson called ‘nothing-like-it’.');
        await expect(page.locator('.lesson-list li')).toHaveCount(lessons.length);
      }
      await page.context().close();
    }
    expect(seeds[0]).not.toBe(seeds[1]);
  });
});

test.describe('by keyboard at 390 × 844', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('a lesson with two wrong answers to one question, each with its reason, and the answer shown', async ({
    page,
  }) => {
    const drawn = await openLesson(page, thresholdPlot, 3);
    for (const [i, task] of thresholdPlot.tasks.entries()) {
      const place = currentTask(page);
      const reply = place.locator('.lesson-reply');
      const { errors, right } = drawn.at(task.id);
      if (task.id === 'radius') {
        for (const { error, answer } of errors.slice(0, 2)) {
          await answerByKeys(page, drawn, task, answer);
          await expect(reply).toContainText(firstWords(error));
          await expect(place.getByLabel('Your answer')).toBeFocused();
        }
        expect(firstWords(errors[0]!.error)).not.toBe(firstWords(errors[1]!.error));
        await page.keyboard.press('ControlOrMeta+A');
        await page.keyboard.type('4 kg');
        await page.keyboard.press('Enter');
        await expect(reply).toContainText('kg');
        await tabTo(page, 'button.plain');
        await page.keyboard.press('Enter');
        await expect(reply).toContainText(/^It is/);
      } else {
        await answerByKeys(page, drawn, task, right);
        await expect(reply).toContainText(/^Right/);
      }
      await expect(reply).toBeFocused();
      await expectNoSidewaysScrolling(page);
      if (i === thresholdPlot.tasks.length - 1) break;
      await tabTo(page, '.lesson-next');
      await page.keyboard.press('Enter');
      await expect(currentTask(page).locator('h3')).toBeFocused();
    }
    await expect(page.locator('.lesson-summary')).toContainText('1 shown to you');
    await expect(page.locator('.lesson-summary li').nth(2)).toContainText('shown to you');
  });
});

test.describe('under a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('every target of a lesson is at least 24 px high and wide', async ({ page }) => {
    const drawn = await openLesson(page, beamSize, 6);
    for (const task of beamSize.tasks) {
      for (const which of [0, 1])
        await answerByMouse(page, drawn, task, wrongAnswer(beamSize, drawn, task, which));
      await expect(currentTask(page).getByRole('button', { name: 'Show me' })).toBeVisible();
      expect(await findSmallTargets(page), task.id).toEqual([]);
      await currentTask(page).getByRole('button', { name: 'Show me' }).tap();
      await expect(currentTask(page).locator('.lesson-explanation')).toBeVisible();
      if (task !== beamSize.tasks.at(-1)) await page.getByRole('button', { name: 'Go on' }).tap();
    }
    await expect(page.locator('.lesson-summary')).toContainText('4 shown to you');
    expect(await findSmallTargets(page), 'finished').toEqual([]);
    await page.getByRole('link', { name: 'All lessons' }).tap();
    await expect(page.locator('.lesson-list')).toBeVisible();
    expect(await findSmallTargets(page), 'list').toEqual([]);
  });
});

for (const lesson of lessons) {
  test(`${lesson.id}: axe finds nothing in any state, light and dark, 390 and 1440`, async ({ page }) => {
    test.setTimeout(400_000);
    const drawn = await openLesson(page, lesson, 2);
    const check = async (state: string, within: string) => {
      await lessonSettled(page);
      for (const [width, colorScheme] of looks) {
        await page.setViewportSize({ width, height: 900 });
        await page.emulateMedia({ colorScheme });
        await settled(page);
        expect(await findViolations(page, within), `${state}, ${width}, ${colorScheme}`).toEqual([]);
        await expectNoSidewaysScrolling(page);
      }
    };
    for (const task of lesson.tasks) {
      await check(`${task.id}: question`, lastTask);
      await answerByMouse(page, drawn, task, wrongAnswer(lesson, drawn, task));
      await expect(currentTask(page).locator('.lesson-reply')).toContainText('Not yet.');
      await check(`${task.id}: wrong`, lastTask);
      await answerByMouse(page, drawn, task, drawn.at(task.id).right);
      await expect(currentTask(page).locator('.lesson-reply')).toContainText(/^Right/);
      await expect(currentTask(page).locator('.lesson-explanation')).toBeVisible();
      const next = page.getByRole('button', { name: 'Go on' });
      if (task !== lesson.tasks.at(-1)) await next.click();
    }
    // Every task stands there as it was answered rightly, and what came of it.
    await expect(page.locator('.lesson-summary')).toBeVisible();
    await check('answered and finished', 'body');
  });
}

for (const colorScheme of ['light', 'dark'] as const)
  test(`list of the lessons, with one begun: axe finds nothing, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openLesson(page, beamSize, 1);
    await page.getByRole('link', { name: 'All lessons' }).click();
    await page.getByRole('button', { name: 'Forget what I have done' }).click();
    expect(await findViolations(page)).toEqual([]);
  });
