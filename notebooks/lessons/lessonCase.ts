import { designGraph } from '../../lib/design/design.ts';
import { createEngine, type Engine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, type DesignState, initialState, type Patch } from '../../lib/graph/state.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { Problem } from '../../lib/problem.ts';
import type { AxisSpec } from '../document.ts';
import type { From } from '../prose.ts';
import type { Ask, Lesson, Made, Task, TypicalError } from './lesson.ts';
import { type Answer, areApart, canBeGiven } from './nearness.ts';

/** A typical error, and what it leads to in this case. */
export interface ErrorInCase {
  readonly error: TypicalError;
  readonly answer: Answer;
}

/** A task with the numbers of a case. */
export interface TaskInCase {
  /** Values of all inputs as the task begins, SI by id. */
  readonly inputs: Patch;
  readonly right: Answer;
  /** Errors that lead to an answer in this case. */
  readonly errors: readonly ErrorInCase[];
  /** The axis that is marked on, with its ends in this case. */
  readonly axis?: AxisSpec;
}

/** A lesson with numbers drawn: right answers exist, and errors are told apart. */
export interface LessonCase {
  readonly seed: number;
  /** Values of all inputs before the first task, SI by id. */
  readonly inputs: Patch;
  /** The task of that id. What tasks set adds up in their order: a lesson is one design that goes on. */
  at(taskId: string): TaskInCase;
}

/** Draws until the tasks can be told apart; a lesson that needs more is badly made. */
const mostDraws = 60;

/**
 * The case of a lesson that belongs to a seed; the same on every machine. Drawn again, the same generator going on,
 * until every task has a right answer and every error that leads anywhere is told from it and from the other errors.
 */
export function openCase(lesson: Lesson, seed: number): LessonCase {
  const random = createRandom(seed);
  const engine = createEngine(designGraph);
  let last: unknown;
  for (let draw = 0; draw < mostDraws; draw++) {
    const state = applyPatch(designGraph, initialState(designGraph), lesson.draw(random));
    try {
      const tasks = tasksOf(lesson, state, engine);
      return { seed, inputs: state.inputs, at: (taskId) => taskIn(tasks, lesson, taskId) };
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      last = error;
    }
  }
  throw new Error(
    `Lesson ${lesson.id}, seed ${seed}: ${mostDraws} draws did not do. ${(last as Problem).message}`,
  );
}

function taskIn(tasks: ReadonlyMap<string, TaskInCase>, lesson: Lesson, taskId: string): TaskInCase {
  const found = tasks.get(taskId);
  if (!found) throw new Error(`The lesson ${lesson.id} has no task '${taskId}'.`);
  return found;
}

/** All tasks in their order; a Problem where one of them does not do. */
function tasksOf(lesson: Lesson, first: DesignState, engine: Engine): Map<string, TaskInCase> {
  const tasks = new Map<string, TaskInCase>();
  let state = first;
  for (const task of lesson.tasks) {
    const set = typeof task.set === 'function' ? task.set(first.inputs) : (task.set ?? {});
    state = applyPatch(designGraph, state, set);
    tasks.set(task.id, taskAt(task, state, engine));
  }
  return tasks;
}

/** The task for these inputs; a Problem where it has no answer, or where two answers would be taken for one another. */
export function taskAt(task: Task, state: DesignState, engine: Engine): TaskInCase {
  const read = reader(state, engine);
  const values = read(task.from, {});
  const ask: Ask<From> = (made) => read(task.from, made);
  const axis = task.kind === 'mark' ? axisOf(task, read(task.figure.from, {})) : undefined;
  const right: Answer = task.answer(values, ask);
  if (!canBeGiven(task, right, axis)) throw unfit(task, `its answer is ${right}`);
  const errors: ErrorInCase[] = [];
  for (const error of task.errors as readonly TypicalError<Answer>[]) {
    const answer = answerOf(error, values, ask);
    if (answer === undefined || !canBeGiven(task, answer, axis)) continue;
    // Errors that are told the same may be taken for one another.
    const others = errors.filter((one) => one.error.reason !== error.reason);
    for (const [id, other] of [
      ['right', right] as const,
      ...others.map((one) => [one.error.id, one.answer] as const),
    ]) {
      if (!areApart(task, answer, other, axis))
        throw unfit(task, `'${error.id}' (${answer}) and '${id}' (${other}) are alike`);
    }
    errors.push({ error, answer });
  }
  return { inputs: state.inputs, right, errors, ...(axis && { axis }) };
}

/** What the error leads to; undefined too where a design with the error made has no value. */
function answerOf(
  error: TypicalError<Answer>,
  values: Record<string, unknown>,
  ask: Ask<From>,
): Answer | undefined {
  try {
    return error.answer(values, ask);
  } catch (problem) {
    if (problem instanceof Problem) return undefined;
    throw problem;
  }
}

function axisOf(
  { figure, along }: Extract<Task, { kind: 'mark' }>,
  values: Record<string, unknown>,
): AxisSpec {
  return figure.view(values)[along];
}

/** Reads quantities of a design, changed as said. */
function reader(state: DesignState, engine: Engine) {
  return (from: From, { set = {}, pins = {} }: Made): Record<string, unknown> => {
    engine.setInputs(applyPatch(designGraph, state, set).inputs);
    const outcomes = engine.evaluate(
      Object.values(from).map(({ id }) => id),
      { pins },
    );
    return Object.fromEntries(
      Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(outcomes[id]!)]),
    );
  };
}

function unfit(task: Task, why: string): Problem {
  return new Problem('absent', `The task ${task.id} does not do: ${why}.`);
}
