import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { createEngine, type Engine } from '../../../lib/graph/engine.ts';
import { valueOrThrow } from '../../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../../lib/graph/state.ts';
import { createRandom } from '../../../lib/numerics/random.ts';
import { judge, solution, taskOf } from '../../../notebooks/lessons/judge.ts';
import type { Ask, Lesson, Task } from '../../../notebooks/lessons/lesson.ts';
import { type LessonCase, openCase, type TaskInCase } from '../../../notebooks/lessons/lessonCase.ts';
import type { Answer } from '../../../notebooks/lessons/nearness.ts';
import type { From } from '../../../notebooks/prose.ts';
import { cases } from '../../cases.ts';

/** Answers near an answer are tried this far out, as a part of its tolerance. */
const jitter = 0.95;

/** Tries a lesson in many cases: answers equal a fresh engine's, and every error is recognised for what it is. */
export function describeLesson(lesson: Lesson, { full = 200, quick = 20 } = {}): void {
  describe(`lesson ${lesson.id}`, () => {
    const seeds = Array.from({ length: cases(full, quick) }, (_, i) => i + 1);
    const opened = () => seeds.map((seed) => openCase(lesson, seed));
    let kept: LessonCase[] | undefined;
    const all = () => (kept ??= opened());

    it('is drawn from its seed alone', () => {
      const [first] = all();
      expect(openCase(lesson, first!.seed).inputs).toEqual(first!.inputs);
      const drawn = new Set(
        all().map(({ inputs }) => JSON.stringify(lesson.tasks.map(({ id }) => [inputs, id]))),
      );
      expect(drawn.size).toBeGreaterThan(seeds.length / 2);
    });

    it.each(lesson.tasks.map(({ id }) => id))('%s: every answer is that of another engine', (id) => {
      const engine = createEngine(designGraph);
      for (const one of all()) expectFresh(lesson, one, id, engine);
    });

    it.each(lesson.tasks.map(({ id }) => id))('%s: answers are recognised for what they are', (id) => {
      const task = taskOf(lesson, id);
      const reached = new Set<string>();
      for (const one of all()) {
        const place = one.at(id);
        const random = createRandom(one.seed);
        expect(judge(lesson, one, id, place.right), `seed ${one.seed}`).toEqual({ kind: 'right' });
        expect(solution(lesson, one, id).value).toBe(place.right);
        expectNear(lesson, one, task, place.right, { kind: 'right' }, random.between(-jitter, jitter));
        for (const { error, answer } of place.errors) {
          reached.add(error.id);
          // Errors with one reason may be taken for one another.
          const verdict = { kind: 'error', error: { reason: error.reason } };
          expect(judge(lesson, one, id, answer), `seed ${one.seed}, ${error.id}`).toMatchObject(verdict);
          expectNear(lesson, one, task, answer, verdict, random.between(-jitter, jitter));
        }
        expectFarOther(lesson, one, task, place);
        expectReasons(lesson, one, task);
      }
      // An error that never leads anywhere would be no error of this task.
      expect([...reached].sort()).toEqual(task.errors.map((error) => error.id).sort());
    });
  });
}

/** Each wrong option is answered with a reason, not only with a no. */
function expectReasons(lesson: Lesson, one: LessonCase, task: Task): void {
  if (task.kind !== 'choice') return;
  for (const option of Object.keys(task.options)) {
    if (option === one.at(task.id).right) continue;
    const verdict = judge(lesson, one, task.id, option);
    expect(verdict.kind, `seed ${one.seed}, ${task.id}: ${option}`).toBe('error');
  }
}

/** The right answer and every error's, worked out by an engine that knows nothing of how the case was drawn. */
function expectFresh(lesson: Lesson, one: LessonCase, id: string, engine: Engine): void {
  const task = taskOf(lesson, id);
  const place = one.at(id);
  const ask: Ask<From> = ({ set = {}, pins = {} }) =>
    readFrom(engine, task.from, { ...place.inputs, ...set }, pins);
  const values = ask({});
  expect(task.answer(values, ask), `seed ${one.seed}`).toBe(place.right);
  for (const { error, answer } of place.errors) {
    expect(error.answer(values, ask), `seed ${one.seed}, ${error.id}`).toBe(answer);
  }
}

function readFrom(engine: Engine, from: From, patch: Patch, pins: Patch): Record<string, unknown> {
  engine.setInputs(applyPatch(designGraph, initialState(designGraph), patch).inputs);
  return Object.fromEntries(
    Object.entries(from).map(([key, { id }]) => [key, valueOrThrow(engine.evaluate([id], { pins })[id]!)]),
  );
}

function expectNear(
  lesson: Lesson,
  one: LessonCase,
  task: Task,
  answer: Answer,
  verdict: unknown,
  part: number,
): void {
  if (typeof answer === 'string' || task.kind === 'choice') return;
  const moved =
    task.kind === 'number'
      ? answer * (1 + part * task.within)
      : moveAlong(one.at(task.id), answer, part * task.within);
  expect(judge(lesson, one, task.id, moved), `seed ${one.seed}: ${moved} near ${answer}`).toMatchObject(
    verdict as object,
  );
}

/** The place that lies a part of the axis further. */
function moveAlong({ axis }: TaskInCase, place: number, part: number): number {
  const [low, high] = axis!.domain;
  return axis!.logarithmic ? place * (high / low) ** part : place + part * (high - low);
}

/** An answer beyond all others is none of them. */
function expectFarOther(
  lesson: Lesson,
  one: LessonCase,
  task: Task,
  { right, errors, axis }: TaskInCase,
): void {
  if (task.kind === 'choice') return;
  const places = [right, ...errors.map(({ answer }) => answer)] as number[];
  const far =
    task.kind === 'number'
      ? 37 * Math.max(...places.map(Math.abs))
      : farOn(places, task.within, axis!.domain);
  if (far === undefined) return;
  const verdict = judge(lesson, one, task.id, far);
  expect(verdict.kind, `seed ${one.seed}: ${far}`).toBe('other');
  expect(verdict).toHaveProperty('hint');
}

/** A place on an axis that is near none of these; undefined where there is none in a hundred. */
function farOn(
  places: readonly number[],
  within: number,
  [low, high]: readonly [number, number],
): number | undefined {
  const parts = Array.from({ length: 101 }, (_, i) => low + ((high - low) * i) / 100);
  return parts.find((part) => places.every((place) => Math.abs(part - place) > 1.01 * within * (high - low)));
}
