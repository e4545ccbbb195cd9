import { expect, type Locator, type Page } from '@playwright/test';
import { toUnit } from '../../lib/graph/units.ts';
import { judge } from '../../notebooks/lessons/judge.ts';
import type { Lesson, Task, TypicalError } from '../../notebooks/lessons/lesson.ts';
import { type LessonCase, openCase } from '../../notebooks/lessons/lessonCase.ts';
import type { Answer } from '../../notebooks/lessons/nearness.ts';
import { writeProgress } from '../../notebooks/lessons/savedProgress.ts';
import { axisSteps, pageSteps } from '../../notebooks/page/figures/axisKeys.ts';
import { shareAt } from '../../notebooks/page/lessons/placeHandle.ts';
import { storageKey } from '../../notebooks/page/lessons/progressStore.ts';

/** Opens a lesson with the values of a seed, as if it had been left before the first answer. */
export async function openLesson(page: Page, lesson: Lesson, seed: number): Promise<LessonCase> {
  const text = writeProgress({ [lesson.id]: { seed, reached: 1, before: 0, tasks: {} } });
  await page.goto('/#lessons');
  await page.evaluate(([key, kept]) => localStorage.setItem(key, kept), [storageKey, text] as const);
  await page.goto('/');
  await page.goto(`/#lessons/${lesson.id}`);
  await page.reload();
  await expect(currentTask(page)).toBeVisible();
  return openCase(lesson, seed);
}

/** Selects the task that is to be answered, or was answered last. */
export const lastTask = '.lesson-task:not(:has(~ .lesson-task))';

/** That task. */
export function currentTask(page: Page): Locator {
  return page.locator(lastTask);
}

/** Waits until nothing in the lesson is older than its design. */
export async function lessonSettled(page: Page): Promise<void> {
  await expect(page.locator('.lesson [data-pending]')).toHaveCount(0, { timeout: 60_000 });
}

/** The first words of a reason, as they stand on the page. */
export function firstWords({ reason }: TypicalError): string {
  const node = reason.nodes[0]!;
  const text = 'children' in node && 'text' in node.children[0]! ? node.children[0].text : '';
  expect(text.length).toBeGreaterThan(8);
  return text.trim();
}

/** A wrong answer of a case: what a typical error leads to, or another one where there is none. */
export function wrongAnswer(lesson: Lesson, drawn: LessonCase, task: Task, which = 0): Answer {
  const { errors, right, axis } = drawn.at(task.id);
  const error = errors[which];
  if (error) return error.answer;
  if (task.kind === 'choice') return Object.keys(task.options).filter((id) => id !== right)[which] ?? '';
  if (task.kind === 'number') return (right as number) * 17 * (which + 1);
  const ends = axis!.domain.filter((place) => judge(lesson, drawn, task.id, place).kind !== 'right');
  return ends[which] ?? ends[0]!;
}

/** Answers with the mouse, typing numbers into the field. */
export async function answerByMouse(
  page: Page,
  drawn: LessonCase,
  task: Task,
  answer: Answer,
): Promise<void> {
  const place = currentTask(page);
  if (task.kind === 'number') await place.getByLabel('Your answer').fill(numberText(task, answer as number));
  else if (task.kind === 'choice') await place.getByLabel(task.options[answer]!, { exact: false }).check();
  else {
    const box = place.locator('.place-moves');
    await box.scrollIntoViewIfNeeded();
    const { width, height } = (await box.boundingBox())!;
    const share = shareAt(drawn.at(task.id).axis!, answer as number);
    const inside = (part: number) => Math.min(1 - 1e-6, Math.max(1e-6, part));
    const position =
      task.along === 'x'
        ? { x: width * inside(share), y: height / 2 }
        : { x: width / 2, y: height * inside(1 - share) };
    await box.click({ position, force: true });
  }
  await place.getByRole('button', { name: /^Answer/ }).click();
}

/** Answers by keys alone, from wherever the focus is. */
export async function answerByKeys(page: Page, drawn: LessonCase, task: Task, answer: Answer): Promise<void> {
  const press = async (key: string, times: number) => {
    for (let i = 0; i < times; i++) await page.keyboard.press(key);
  };
  if (task.kind === 'number') {
    await tabTo(page, 'input[type="text"]');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(numberText(task, answer as number));
    await page.keyboard.press('Enter');
  } else if (task.kind === 'choice') {
    await tabTo(page, 'input[type="radio"]');
    const ids = Object.keys(task.options);
    // Tab leads to the one chosen, or to the first.
    const from = await page.evaluate(() => (document.activeElement as HTMLInputElement).value);
    const steps = (ids.indexOf(String(answer)) - ids.indexOf(from) + ids.length) % ids.length;
    if (steps === 0) await page.keyboard.press('Space');
    await press('ArrowDown', steps);
    await page.keyboard.press('Enter');
  } else {
    await tabTo(page, '[role="slider"]');
    await page.keyboard.press('Home');
    const steps = Math.round(axisSteps * shareAt(drawn.at(task.id).axis!, answer as number));
    await press('PageUp', Math.floor(steps / pageSteps));
    await press('ArrowRight', steps % pageSteps);
    await page.keyboard.press('Enter');
  }
}

/** Presses Tab until something of this kind in the last task has the focus. */
export async function tabTo(page: Page, selector: string, within = lastTask): Promise<void> {
  const isThere = () =>
    page.evaluate(
      ([kind, place]) =>
        document.activeElement?.closest(place!) !== null && document.activeElement!.matches(kind!),
      [selector, within],
    );
  for (let i = 0; i < 150; i++) {
    if (await isThere()) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not lead to ${selector}`);
}

/** A bare number in the unit of the field; the page reads it as a person's. */
function numberText({ unit, display }: Extract<Task, { kind: 'number' }>, answer: number): string {
  return String(toUnit(answer, unit, display.replace(/^auto:/, '')));
}
