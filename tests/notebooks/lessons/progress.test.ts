import { describe, expect, it } from 'vitest';
import type { Task } from '../../../notebooks/lessons/lesson.ts';
import {
  beginRun,
  doneOf,
  isFinished,
  isSameRun,
  mayShow,
  type Run,
  rightAtFirst,
  tasksReached,
  withAnswer,
  withNext,
  withShown,
} from '../../../notebooks/lessons/progress.ts';
import {
  endSaid,
  lessonState,
  listState,
  summarySaid,
  taskEnd,
} from '../../../notebooks/lessons/progressWords.ts';
import { smallLesson } from './smallLesson.ts';

const [width, side, place] = smallLesson.tasks as [Task, Task, Task];
const begun = beginRun(smallLesson, 5);
const wrongOnce = withAnswer(begun, width, '1', false);
const rightOnce = withAnswer(begun, width, '8', true);
/** Every task right at once. */
const all = (run: Run) =>
  smallLesson.tasks.reduce((done, task) => withNext(smallLesson, withAnswer(done, task, '8', true)), run);

describe('run of a lesson', () => {
  it('is the same where values, tries and ends are, in whatever order they were written', () => {
    const { seed, reached, tasks, before } = wrongOnce;
    expect(isSameRun(wrongOnce, { before, tasks, reached, seed })).toBe(true);
    for (const other of [begun, rightOnce, { ...wrongOnce, seed: 6 }, { ...wrongOnce, before: 1 }])
      expect(isSameRun(wrongOnce, other)).toBe(false);
    expect(isSameRun(wrongOnce, withShown(wrongOnce, width))).toBe(false);
  });

  it('keeps tries in their order, and none after the end', () => {
    const twice = withAnswer(withAnswer(wrongOnce, width, '2', false), width, '8', true);
    expect(doneOf(twice, width)).toEqual({ tries: ['1', '2', '8'], end: 'right' });
    expect(withAnswer(twice, width, '9', false)).toBe(twice);
    expect(withShown(twice, width)).toBe(twice);
    expect(doneOf(begun, { id: 'constructor' })).toEqual({ tries: [] });
  });

  it('offers the answer after the second wrong one, not before, and not after the end', () => {
    const twice = withAnswer(wrongOnce, width, '2', false);
    const open = [begun, wrongOnce, twice, withShown(twice, width)].map((run) => mayShow(doneOf(run, width)));
    expect(open).toEqual([false, false, true, false]);
  });

  it('shows tasks up to the open one', () => {
    const ids = (run: Run) => tasksReached(smallLesson, run).map(({ id }) => id);
    expect(ids(begun)).toEqual(['width']);
    expect(ids(rightOnce)).toEqual(['width']);
    expect(ids(withNext(smallLesson, rightOnce))).toEqual(['width', 'side']);
    // What was kept of a lesson that has changed since may lack a task in the middle.
    expect(ids({ ...begun, reached: 9 })).toEqual(['width']);
    expect(ids({ ...begun, reached: 0 })).toEqual(['width']);
    expect(ids(all(begun))).toEqual(['width', 'side', 'place']);
  });

  it('counts how often it was finished before', () => {
    expect(beginRun(smallLesson, 6, wrongOnce).before).toBe(0);
    const again = beginRun(smallLesson, 6, all(begun));
    expect(again).toEqual({ seed: 6, reached: 1, tasks: {}, before: 1 });
    expect(beginRun(smallLesson, 7, again).before).toBe(1);
    expect(beginRun(smallLesson, 7, all(again)).before).toBe(2);
  });

  it('is finished once each task has ended, and knows which were right at once', () => {
    expect([begun, rightOnce, all(begun)].map((run) => isFinished(smallLesson, run))).toEqual([
      false,
      false,
      true,
    ]);
    const mixed = all(withShown(withAnswer(wrongOnce, width, '2', false), width));
    expect(rightAtFirst(smallLesson, mixed)).toEqual([side, place]);
  });
});

describe('words about a run', () => {
  const shown = all(withShown(wrongOnce, width));
  const hinted = all(withAnswer(wrongOnce, width, '8', true));
  const neverAtOnce = smallLesson.tasks.reduce(
    (run, task) => withAnswer(withAnswer(run, task, '1', false), task, '8', true),
    begun,
  );

  it('in the list', () => {
    expect(lessonState(smallLesson, undefined)).toBe('not begun');
    expect(lessonState(smallLesson, begun)).toBe('opened, nothing answered yet');
    expect(lessonState(smallLesson, wrongOnce)).toBe('begun, 0 of 3 answered');
    expect(lessonState(smallLesson, rightOnce)).toBe('begun, 1 of 3 answered');
    expect(lessonState(smallLesson, all(begun))).toBe('done, 3 of 3 right at once');
    const earlier = (times: number) => lessonState(smallLesson, { ...begun, before: times });
    expect([earlier(1), earlier(2), earlier(3)]).toEqual([
      'begun, 0 of 3 answered, done once before',
      'begun, 0 of 3 answered, done twice before',
      'begun, 0 of 3 answered, done 3 times before',
    ]);
  });

  it('about all lessons', () => {
    expect(listState([smallLesson], {})).toBe('');
    expect(listState([smallLesson], { small: begun })).toBe('You have done 0 of 1 lessons.');
    expect(listState([smallLesson], { small: all(begun) })).toBe('You have done 1 of 1 lessons.');
    expect(listState([smallLesson], { small: beginRun(smallLesson, 1, all(begun)) })).toBe(
      'You have done 1 of 1 lessons.',
    );
  });

  it('about the end of a task', () => {
    expect(taskEnd(begun, width)).toBe('open');
    expect(taskEnd(shown, width)).toBe('shown to you');
    expect(taskEnd(rightOnce, width)).toBe('right at once');
    expect(taskEnd(hinted, width)).toBe('right at the second answer');
    const fifth = { tries: ['1', '2', '3', '4', '5'], end: 'right' } as const;
    expect(taskEnd({ ...begun, tasks: { width: fifth } }, width)).toBe('right at the fifth answer');
    const tries = Array.from({ length: 9 }, () => '1');
    expect(taskEnd({ ...begun, tasks: { width: { tries, end: 'right' } } }, width)).toBe(
      'right after 8 other answers',
    );
  });

  it('after the last task', () => {
    const once = withAnswer(withAnswer(begun, width, '1', false), width, '8', true);
    const twice = withAnswer(withAnswer(once, side, 'narrower', false), side, 'wider', true);
    expect(summarySaid(smallLesson, all(twice))).toMatch(/^1 of 3 right at once, the others after a hint\./);
    expect(summarySaid(smallLesson, all(begun))).toMatch(/^All 3 right at once\./);
    expect(summarySaid(smallLesson, shown)).toMatch(/^2 of 3 right at once, 1 shown to you\./);
    expect(summarySaid(smallLesson, hinted)).toMatch(/^2 of 3 right at once, the other one after a hint\./);
    expect(summarySaid(smallLesson, neverAtOnce)).toMatch(/^None right at once, all after a hint\./);
  });

  it('about the right answer', () => {
    const right = { tries: ['8'], end: 'right' } as const;
    const given = { tries: ['1', '2'], end: 'shown' } as const;
    expect(endSaid(width, right, '8.2 mm')).toBe('Right. You said 8\u202fmm; worked out, it is 8.2 mm.');
    expect(endSaid(width, { ...right, tries: ['8000 um'] }, '8 mm')).toContain('You said 8000 um;');
    expect(endSaid(width, given, '8.2 mm')).toBe('It is 8.2 mm.');
    expect(endSaid(side, right, 'It gets wider.')).toBe('Right: It gets wider.');
    expect(endSaid(side, given, 'It gets wider')).toBe('The answer is: It gets wider.');
    expect(endSaid(place, { tries: [3], end: 'right' }, '3 mm')).toBe(
      'Right. Worked out, the place is 3 mm.',
    );
    expect(endSaid(place, { tries: [3.1], end: 'right' }, '3 mm', '3.1 mm')).toBe(
      'Right. You marked 3.1 mm; worked out, the place is 3 mm.',
    );
    expect(endSaid(place, given, '3 mm')).toBe('The place is 3 mm; it is marked on the chart.');
    expect([endSaid(width, right, undefined), endSaid(width, given, undefined)]).toEqual([
      'Right.',
      'The explanation tells the answer.',
    ]);
  });
});
