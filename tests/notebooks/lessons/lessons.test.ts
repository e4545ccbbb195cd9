import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { valueOrThrow } from '../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../lib/graph/quantity.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import type { Block } from '../../../notebooks/document.ts';
import { solution } from '../../../notebooks/lessons/judge.ts';
import type { Task } from '../../../notebooks/lessons/lesson.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { lessons } from '../../../notebooks/lessons/lessons.ts';
import { firstProblem, neededQuantities } from '../../../notebooks/prose.ts';
import { proseText } from '../../../notebooks/slotPieces.ts';
import { cases } from '../../cases.ts';
import { checkFigure } from '../figureCheck.ts';

describe('all lessons together', () => {
  it('have names of their own', () => {
    const ids = lessons.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id, tasks } of lessons) {
      const names = [id, ...tasks.flatMap((task) => [task.id, ...task.errors.map((error) => error.id)])];
      for (const name of names) expect(name).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
      expect(new Set(tasks.map((task) => task.id)).size).toBe(tasks.length);
    }
  });

  it('are answered by numbers, choices and marks', () => {
    const kinds = lessons.flatMap(({ tasks }) => tasks.map(({ kind }) => kind));
    expect(lessons.length).toBeGreaterThanOrEqual(10);
    expect(kinds.filter((kind) => kind === 'mark').length).toBeGreaterThanOrEqual(3);
    expect(new Set(kinds)).toEqual(new Set(['number', 'choice', 'mark']));
  });

  it.each(lessons)('$id predicts, observes and explains', ({ tasks, minutes, about }) => {
    expect(new Set(tasks.map(({ stage }) => stage))).toEqual(new Set(['predict', 'observe', 'explain']));
    expect(tasks.map(({ kind }) => kind)).toContain('number');
    expect(tasks.length).toBeGreaterThanOrEqual(3);
    expect(tasks.length).toBeLessThanOrEqual(5);
    expect(minutes).toBeGreaterThanOrEqual(5);
    expect(minutes).toBeLessThanOrEqual(10);
    expect(about).toMatch(/^[A-Z].*\.$/);
  });
});

/** Reasons for wrong answers. */
const reasonsOf = (task: Task) => [
  ...task.errors.map(({ reason }) => reason),
  ...(task.kind === 'choice' ? Object.values(task.otherwise ?? {}) : []),
];

/** Blocks of a task that are drawn. */
const drawn = (task: Task): readonly Block[] => [
  ...(task.shows ?? []),
  ...(task.reveals ?? []),
  ...(task.kind === 'mark' ? [task.figure] : []),
];

describe.each(lessons)('words and charts of $id', (lesson) => {
  const seeds = Array.from({ length: cases(12, 2) }, (_, i) => i + 1);
  const outcomesIn = (inputs: Patch) => {
    const engine = createEngine(designGraph, inputs);
    return ({ id }: Quantity) => engine.evaluate([id])[id]!;
  };

  it.each(lesson.tasks)('$id says nothing that has no value, and not its answer', (task) => {
    for (const seed of seeds) {
      const one = openCase(lesson, seed);
      const outcomeOf = outcomesIn(one.at(task.id).inputs);
      for (const prose of [task.question, task.explanation, ...reasonsOf(task)]) {
        expect(firstProblem(neededQuantities(prose), outcomeOf), `seed ${seed}`).toBeUndefined();
        const text = proseText(prose, outcomeOf);
        expect(text).not.toMatch(/undefined|NaN|—|\d[ \n]%/);
      }
      if (task.kind !== 'number') continue;
      // A list may hold it with the other sign, where it is the sign that is asked for.
      const question = proseText(task.question, outcomeOf).replaceAll(/\u2212\S+/g, '');
      expect(question).not.toContain(solution(lesson, one, task.id).text);
    }
  });

  it.each(lesson.tasks.filter((task) => drawn(task).length > 0))('charts of $id are whole', (task) => {
    for (const seed of seeds) {
      const outcomeOf = outcomesIn(openCase(lesson, seed).at(task.id).inputs);
      for (const block of drawn(task)) {
        if (block.kind !== 'figure') continue;
        const read = Object.entries(block.from).map(([key, id]) => [key, valueOrThrow(outcomeOf(id))]);
        checkFigure(block.view(Object.fromEntries(read)));
      }
    }
  });
});
