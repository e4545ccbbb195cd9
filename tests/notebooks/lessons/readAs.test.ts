import { expect, it } from 'vitest';
import type { NumberTask, Task } from '../../../notebooks/lessons/lesson.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { readAs } from '../../../notebooks/lessons/readAs.ts';
import { createLessonAnswers } from '../../../notebooks/page/lessons/desk/answerLesson.ts';
import { smallLesson } from './smallLesson.ts';

const [width, side, place] = smallLesson.tasks as [NumberTask, Task, Task];
const inNanometres = { ...width, display: 'nm' };

it.each([
  ['1,201 nm', 'Read as 1.201\u202fnm; a comma stands for the decimal point.'],
  ['1,201', 'Read as 1.201\u202fnm; a comma stands for the decimal point.'],
  ['1,234,567 nm', 'Read as 1.234567 × 10⁶\u202fnm.'],
  ['1201', 'Read as 1201\u202fnm.'],
  ['1 201.5', 'Read as 1201.5\u202fnm.'],
  ['12 um', 'Read as 12\u202fµm.'],
  ['-3 mm', 'Read as \u22123\u202fmm.'],
])('%s', (text, words) => {
  expect(readAs(inNanometres, text)).toBe(words);
});

it('a mark by its place, a choice not at all', () => {
  const { axis } = openCase(smallLesson, 1).at('place');
  expect(readAs(place, 4.5, axis)).toBe('You marked 4.5\u202fmm.');
  expect(readAs(side, 'narrower')).toBeUndefined();
});

it('stands beside what is said of a wrong answer, and of a marked place at the end', () => {
  const answers = createLessonAnswers([smallLesson]);
  const ask = { lesson: 'small', seed: 1 } as const;
  expect(answers({ ...ask, kind: 'judge', task: 'width', given: '99' })).toMatchObject({
    answer: { kind: 'other', read: 'Read as 99\u202fmm.' },
  });
  expect(answers({ ...ask, kind: 'judge', task: 'place', given: 0.5 })).toMatchObject({
    answer: { kind: 'other', read: 'You marked 0.5\u202fmm.' },
  });
  expect(answers({ ...ask, kind: 'solution', task: 'place', given: 4.5 })).toMatchObject({
    answer: { marked: '4.5\u202fmm' },
  });
  expect(answers({ ...ask, kind: 'solution', task: 'place' })).not.toHaveProperty('answer.marked');
});
