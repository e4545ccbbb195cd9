import { withUnit } from '../../lib/graph/units.ts';
import { splitQuantityText } from '../../lib/graph/unitText.ts';
import type { Lesson, NumberTask, Task } from './lesson.ts';
import { doneOf, type Given, isFinished, type Run, rightAtFirst, type TaskDone } from './progress.ts';

/** What each stage of a lesson asks for. */
export const stageWords: Readonly<Record<Task['stage'], string>> = {
  predict: 'Say what you expect',
  observe: 'Read it off',
  explain: 'Say why',
};

/** What was done of a lesson, for the list. */
export function lessonState(lesson: Lesson, run: Run | undefined): string {
  if (!run) return 'not begun';
  const { length } = lesson.tasks;
  if (isFinished(lesson, run)) return `done, ${rightAtFirst(lesson, run).length} of ${length} right at once`;
  const answered = lesson.tasks.filter((task) => doneOf(run, task).end !== undefined).length;
  if (Object.keys(run.tasks).length === 0 && run.before === 0) return 'opened, nothing answered yet';
  const again = run.before > 0 ? `, done ${timesWord(run.before)} before` : '';
  return `begun, ${answered} of ${length} answered${again}`;
}

/** How all lessons stand; empty before the first was begun. */
export function listState(lessons: readonly Lesson[], runs: Readonly<Record<string, Run>>): string {
  const begun = lessons.filter(({ id }) => Object.hasOwn(runs, id));
  if (begun.length === 0) return '';
  const finished = begun.filter(
    (lesson) => isFinished(lesson, runs[lesson.id]!) || runs[lesson.id]!.before > 0,
  );
  return `You have done ${finished.length} of ${lessons.length} lessons.`;
}

/** How a task ended. */
export function taskEnd(run: Run, task: Task): string {
  const { tries, end } = doneOf(run, task);
  if (end === undefined) return 'open';
  if (end === 'shown') return 'shown to you';
  if (tries.length === 1) return 'right at once';
  const ordinal = ordinals[tries.length - 1];
  return ordinal ? `right at the ${ordinal} answer` : `right after ${tries.length - 1} other answers`;
}

/** What came of a lesson that is finished. */
export function summarySaid(lesson: Lesson, run: Run): string {
  const { length } = lesson.tasks;
  const right = rightAtFirst(lesson, run).length;
  if (right === length) return `All ${length} right at once. You can do what this lesson is about.`;
  const shown = lesson.tasks.filter((task) => doneOf(run, task).end === 'shown').length;
  const first = right === 0 ? 'None right at once' : `${right} of ${length} right at once`;
  const others = right === 0 ? 'all' : length - right === 1 ? 'the other one' : 'the others';
  if (shown > 0)
    return `${first}, ${shown} shown to you. Take it again with other values once you have read the explanations.`;
  return `${first}, ${others} after a hint. With other values you will see whether it stays.`;
}

/** What is said once a task has ended; `answer` is the right one as it is written, `marked` the place that was marked. */
export function endSaid(
  task: Task,
  { tries, end }: TaskDone,
  answer: string | undefined,
  marked?: string,
): string {
  const right = end === 'right';
  if (answer === undefined) return right ? 'Right.' : 'The explanation tells the answer.';
  const written = answer.replace(/\.$/, '');
  if (task.kind === 'choice') return right ? `Right: ${written}.` : `The answer is: ${written}.`;
  if (task.kind === 'mark') {
    if (!right) return `The place is ${written}; it is marked on the chart.`;
    return marked === undefined
      ? `Right. Worked out, the place is ${written}.`
      : `Right. You marked ${marked}; worked out, the place is ${written}.`;
  }
  return right
    ? `Right. You said ${givenText(task, tries.at(-1)!)}; worked out, it is ${written}.`
    : `It is ${written}.`;
}

/** What was typed, a bare number with the unit that it counts in. */
function givenText({ display }: NumberTask, given: Given): string {
  const text = String(given).trim();
  return splitQuantityText(text).unit === '' ? withUnit(text, display) : text;
}

function timesWord(count: number): string {
  return count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;
}

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth'];
