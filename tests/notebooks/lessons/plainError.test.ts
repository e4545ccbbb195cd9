import { expect, it } from 'vitest';
import { judge } from '../../../notebooks/lessons/judge.ts';
import { choiceTask } from '../../../notebooks/lessons/lesson.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { errorOf } from '../../../notebooks/lessons/plainError.ts';
import { prose } from '../../../notebooks/prose.ts';
import { smallLesson } from './smallLesson.ts';

const [reason, typical] = [prose`Nor the third.`, prose`Not the first.`];
const chosen = choiceTask({
  id: 'chosen',
  stage: 'predict',
  question: prose`?`,
  explanation: prose`!`,
  from: {},
  options: { one: 'The first', two: 'The second', three: 'The third', four: 'The fourth' },
  otherwise: { one: prose`?`, three: reason },
  answer: () => 'two',
  errors: [{ id: 'first', reason: typical, answer: () => 'one' }],
});
const lesson = { ...smallLesson, tasks: [chosen] };

it('an option that no error leads to has a reason of its own, where the task gives one', () => {
  const told = (option: string) => judge(lesson, openCase(lesson, 5), 'chosen', option);
  expect(told('three')).toMatchObject({ kind: 'error', error: { id: 'otherwise.three', reason } });
  // A typical error goes before it.
  expect(told('one')).toMatchObject({ kind: 'error', error: { id: 'first' } });
  expect(told('two')).toEqual({ kind: 'right' });
  expect(told('four')).toEqual({ kind: 'other', hint: 'That is not what happens here.' });
});

it('is found again by its id', () => {
  expect(errorOf(chosen, 'otherwise.three')?.reason).toBe(reason);
  expect(errorOf(chosen, 'first')?.reason).toBe(typical);
  const absent = [errorOf(chosen, 'otherwise.two'), errorOf(smallLesson.tasks[0]!, 'otherwise.three')];
  expect(absent).toEqual([undefined, undefined]);
});
