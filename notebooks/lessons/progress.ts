import type { Lesson, Task } from './lesson.ts';

/** An answer as it was given: the text of a number, the id of an option, or a place along an axis in its unit. */
export type Given = string | number;

/** What was done of a task. */
export interface TaskDone {
  /** Answers in the order in which they were given; the last one may be the right one. */
  readonly tries: readonly Given[];
  /** How it ended: with the right answer, or by being shown it; absent while it is open. */
  readonly end?: 'right' | 'shown';
}

/** A lesson under way, or done: the values it was taken with, and what was answered. */
export interface Run {
  /** What the values were drawn by. */
  readonly seed: number;
  /** Tasks that were reached, the open one included. */
  readonly reached: number;
  /** By the id of the task. */
  readonly tasks: Readonly<Record<string, TaskDone>>;
  /** How often it was finished before this run. */
  readonly before: number;
}

/** Runs by the id of their lesson. */
export type Progress = Readonly<Record<string, Run>>;

/** Wrong answers after which the right one is offered. */
const triesBeforeShowing = 2;

const untouched: TaskDone = { tries: [] };

/** A new run of a lesson, after the one before it. */
export function beginRun(lesson: Lesson, seed: number, last?: Run): Run {
  const before = last ? last.before + (isFinished(lesson, last) ? 1 : 0) : 0;
  return { seed, reached: 1, tasks: {}, before };
}

/** Whether two runs have the same values, tries and ends. */
export function isSameRun(one: Run, other: Run): boolean {
  const written = ({ seed, reached, before, tasks }: Run) => JSON.stringify([seed, reached, before, tasks]);
  return written(one) === written(other);
}

/** What was done of a task of a run. */
export function doneOf(run: Run, { id }: Pick<Task, 'id'>): TaskDone {
  return Object.hasOwn(run.tasks, id) ? run.tasks[id]! : untouched;
}

/** The run after an answer to a task that is open; an ended task stays as it is. */
export function withAnswer(run: Run, task: Task, given: Given, right: boolean): Run {
  const { tries, end } = doneOf(run, task);
  if (end !== undefined) return run;
  const done: TaskDone = { tries: [...tries, given], ...(right && { end: 'right' }) };
  return { ...run, tasks: { ...run.tasks, [task.id]: done } };
}

/** The run once the right answer of a task was asked for. */
export function withShown(run: Run, task: Task): Run {
  const { tries, end } = doneOf(run, task);
  if (end !== undefined) return run;
  return { ...run, tasks: { ...run.tasks, [task.id]: { tries, end: 'shown' } } };
}

/** The run with the next task reached. */
export function withNext(lesson: Lesson, run: Run): Run {
  return { ...run, reached: Math.min(lesson.tasks.length, run.reached + 1) };
}

/** Tasks to be seen: those that were reached, up to the first one that is open. */
export function tasksReached(lesson: Lesson, run: Run): readonly Task[] {
  const reached = lesson.tasks.slice(0, Math.max(1, run.reached));
  const open = reached.findIndex((task) => doneOf(run, task).end === undefined);
  return open < 0 ? reached : reached.slice(0, open + 1);
}

/** Whether every task was answered, or shown. */
export function isFinished(lesson: Lesson, run: Run): boolean {
  return lesson.tasks.every((task) => doneOf(run, task).end !== undefined);
}

/** Whether the right answer may be asked for. */
export function mayShow({ tries, end }: TaskDone): boolean {
  return end === undefined && tries.length >= triesBeforeShowing;
}

/** Tasks of a lesson that were right at the first answer. */
export function rightAtFirst(lesson: Lesson, run: Run): readonly Task[] {
  return lesson.tasks.filter((task) => {
    const { tries, end } = doneOf(run, task);
    return end === 'right' && tries.length === 1;
  });
}
