import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../../lib/graph/units.ts';
import type { Block, FigureBlock, FigureSpec } from '../../../notebooks/document.ts';
import type { MarkTask, NumberTask, Task } from '../../../notebooks/lessons/lesson.ts';
import { type LessonCase, openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { lessons } from '../../../notebooks/lessons/lessons.ts';
import { shownWith } from '../../../notebooks/page/lessons/taskCharts.ts';
import { cases } from '../../cases.ts';
import { figureOf } from './byHand.ts';

/** Charts of a task that a person sees before the answer, drawn. */
function chartsOf(one: LessonCase, task: Task, blocks: readonly Block[]): FigureSpec[] {
  const figures = blocks.filter((block): block is FigureBlock => block.kind === 'figure');
  return figures.map((block) => figureOf(block, one.at(task.id).inputs));
}

/** With the question, where the chart is not empty still. */
const atFirst = (task: Task) => shownWith(task).flatMap(({ block, bare }) => (bare ? [] : [block]));

/** All that is drawn by the time a task is asked. */
function chartsUpTo(one: LessonCase, tasks: readonly Task[], task: Task): FigureSpec[] {
  const before = tasks.slice(0, tasks.indexOf(task));
  return [
    ...before.flatMap((earlier) => chartsOf(one, earlier, [...atFirst(earlier), ...(earlier.reveals ?? [])])),
    ...chartsOf(one, task, atFirst(task)),
  ];
}

const wordsOf = ({ title, summary, series, marks = [] }: FigureSpec): string[] => [
  title,
  summary,
  ...series.map(({ label }) => label),
  ...marks.map(({ label }) => label ?? ''),
];

/** Numbers in a text with the unit behind them, in SI; those of another kind are left out. */
function quantitiesIn(text: string, { unit }: NumberTask): number[] {
  const found = text.matchAll(/[\u2212-]?\d+(?:\.\d+)?[\u202f\u00a0 ]?(?:[%a-zA-Zµ°/²³·]+)?/g);
  return [...found].flatMap(([piece]) => {
    const bare = /^[\u2212-]?[\d.]+$/.test(piece.trim());
    if (bare && unit !== '1') return [];
    try {
      return [parseQuantity(piece.replace(/[.,]$/, ''), unit)];
    } catch {
      return [];
    }
  });
}

describe.each(lessons)('charts of $id', (lesson) => {
  const seeds = Array.from({ length: cases(12, 2) }, (_, i) => i + 1);

  it.each(lesson.tasks.filter(({ kind }) => kind !== 'choice'))('do not tell the answer of $id', (task) => {
    for (const seed of seeds) {
      const one = openCase(lesson, seed);
      const right = one.at(task.id).right as number;
      if (task.kind === 'mark') {
        const marks = chartsOf(one, task, atFirst(task)).flatMap(({ marks = [] }) => marks);
        const { axis } = one.at(task.id);
        const [low, high] = axis!.domain;
        const { along, within } = task as MarkTask;
        for (const mark of marks)
          expect(Math.abs((mark[along] ?? Number.NaN) - right) / (high - low) < within, mark.label).toBe(
            false,
          );
        continue;
      }
      for (const words of chartsUpTo(one, lesson.tasks, task).flatMap(wordsOf)) {
        const told = quantitiesIn(words, task as NumberTask);
        expect(
          told.filter((value) => Math.abs(value / right - 1) < (task as NumberTask).within),
          `seed ${seed}: ${words}`,
        ).toEqual([]);
      }
    }
  });
});

it('finds an answer that a caption tells', () => {
  const task = { kind: 'number', unit: 'm' } as NumberTask;
  expect(quantitiesIn('1/e² at 17.5\u202fµm, 5\u202fmJ', task)).toEqual([17.5e-6]);
  expect(quantitiesIn('the line at 0.2\u202fJ/cm².', { ...task, unit: 'J/m^2' })).toEqual([2000]);
  expect(quantitiesIn('12\u202f% of it, 3 times', { ...task, unit: '1' })).toContain(0.12);
});
