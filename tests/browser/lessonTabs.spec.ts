import { expect, test } from '@playwright/test';
import { lessons } from '../../notebooks/lessons/lessons.ts';
import {
  answerByMouse,
  currentTask,
  firstWords,
  lessonSettled,
  openLesson,
  wrongAnswer,
} from './lessonSteps.ts';

test.use({ viewport: { width: 1440, height: 900 } });

const lessonOf = (id: string) => lessons.find((one) => one.id === id)!;

test('two tabs on one lesson: each follows the other, and no answer is lost', async ({ page, context }) => {
  const lesson = lessonOf('beam-size');
  const [first, second] = lesson.tasks;
  const drawn = await openLesson(page, lesson, 9);
  const other = await context.newPage();
  await other.goto(`/#lessons/${lesson.id}`);
  await expect(currentTask(other)).toBeVisible();
  await answerByMouse(page, drawn, first!, drawn.at(first!.id).right);
  await expect(currentTask(other).locator('.lesson-reply')).toContainText(/^Right/);
  await other.getByRole('button', { name: 'Go on' }).click();
  const wrong = drawn.at(second!.id).errors[0]!;
  await answerByMouse(other, drawn, second!, wrong.answer);
  await expect(currentTask(other).locator('.lesson-reply')).toContainText(firstWords(wrong.error));
  await expect(page.locator('.lesson-task')).toHaveCount(2);
  await expect(currentTask(page).locator('.lesson-reply')).toContainText(firstWords(wrong.error));
  await answerByMouse(page, drawn, second!, drawn.at(second!.id).right);
  await expect(currentTask(other).locator('.lesson-reply')).toContainText(/^Right/);
});

test('a mark on a chart stands there again after a reload', async ({ page }) => {
  const lesson = lessons.find(({ tasks }) => tasks.some(({ kind }) => kind === 'mark'))!;
  const place = lesson.tasks.findIndex(({ kind }) => kind === 'mark');
  const drawn = await openLesson(page, lesson, 3);
  for (const task of lesson.tasks.slice(0, place)) {
    await answerByMouse(page, drawn, task, drawn.at(task.id).right);
    await page.getByRole('button', { name: 'Go on' }).click();
  }
  const task = lesson.tasks[place]!;
  await answerByMouse(page, drawn, task, wrongAnswer(lesson, drawn, task));
  await expect(currentTask(page).locator('.lesson-reply')).not.toBeEmpty();
  const mark = currentTask(page).getByRole('slider');
  const words = await mark.getAttribute('aria-valuetext');
  expect(words).not.toMatch(/not put/);
  await page.reload();
  await lessonSettled(page);
  await expect(mark).toHaveAttribute('aria-valuetext', words!);
  await expect(currentTask(page).locator('.lesson-marked')).toHaveText(`at ${words}`);
});
