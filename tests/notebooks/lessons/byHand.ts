import { designGraph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { hasValue } from '../../../lib/graph/outcome.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import type { FigureBlock, FigureSpec } from '../../../notebooks/document.ts';
import type { Lesson } from '../../../notebooks/lessons/lesson.ts';
import { type LessonCase, openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { expectClose } from '../../close.ts';

/** The case of a lesson with these inputs, for arithmetic on paper. */
export const caseWith = (lesson: Lesson, inputs: Patch): LessonCase =>
  openCase({ ...lesson, draw: () => inputs }, 1);

/** The right answer and every error's against numbers worked out by hand; no error is left out. */
export function expectByHand(
  opened: LessonCase,
  task: string,
  right: number,
  errors: Readonly<Record<string, number>>,
  relative: number,
): void {
  const found = opened.at(task);
  expectClose(found.right as number, right, { relative, source: `${task}, by hand` });
  const given = new Map(found.errors.map(({ error, answer }) => [error.id, answer as number]));
  for (const [id, value] of Object.entries(errors)) {
    const answer = given.get(id) ?? Number.NaN;
    expectClose(answer, value, {
      relative,
      absolute: 1e-12,
      source: `${task}, ${id}, by hand`,
    });
    given.delete(id);
  }
  if (given.size > 0) throw new Error(`${task}: not worked by hand: ${[...given.keys()].join(', ')}`);
}

/** The options that the errors of a task lead to, by id. */
export const chosenBy = (opened: LessonCase, task: string) =>
  Object.fromEntries(opened.at(task).errors.map(({ error, answer }) => [error.id, answer]));

/** A figure as a task shows it. */
export function figureOf(block: FigureBlock, inputs: Patch): FigureSpec {
  const ids = Object.entries(block.from).map(([key, { id }]) => [key, id] as const);
  const outcomes = createEngine(designGraph, inputs).evaluate(ids.map(([, id]) => id));
  const values = ids.map(([key, id]) => {
    const outcome = outcomes[id]!;
    if (!hasValue(outcome)) throw new Error(`${block.id}: ${outcome.problem.message}`);
    return [key, outcome.value];
  });
  return block.view(Object.fromEntries(values));
}
