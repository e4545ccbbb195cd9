import { describe, expect, it } from 'vitest';
import { focusRadius } from '../../../lib/design/focus.ts';
import { Problem } from '../../../lib/problem.ts';
import { figure } from '../../../notebooks/document.ts';
import { judge, solution } from '../../../notebooks/lessons/judge.ts';
import {
  choiceTask,
  type Lesson,
  markTask,
  numberTask,
  type Task,
} from '../../../notebooks/lessons/lesson.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { prose } from '../../../notebooks/prose.ts';

/** λ f/(π w) of the initial design: 1030 nm, 100 mm, 5 mm. */
const radius = (1.03e-6 * 0.1) / (Math.PI * 5e-3);
const common = {
  stage: 'predict',
  question: prose`?`,
  explanation: prose`!`,
  from: { radius: focusRadius },
} as const;

const typed = numberTask({
  ...common,
  id: 'typed',
  unit: 'm',
  display: 'um',
  within: 0.02,
  answer: ({ radius }) => radius,
  errors: [{ id: 'diameter', reason: prose`A diameter.`, answer: ({ radius }) => 2 * radius }],
});

const signed = numberTask({
  ...common,
  id: 'signed',
  unit: 'm',
  display: 'um',
  within: 0.02,
  answer: ({ radius }) => -radius,
  errors: [],
});

const chosen = choiceTask({
  ...common,
  id: 'chosen',
  options: { one: 'The first', two: 'The second', three: 'The third' },
  answer: () => 'two',
  errors: [{ id: 'first', reason: prose`Not the first.`, answer: () => 'one' }],
});

const marked = markTask({
  ...common,
  id: 'marked',
  figure: figure({
    id: 'chart',
    from: { radius: focusRadius },
    view: () => ({
      title: 'Chart',
      x: { label: 'radius', unit: 'µm', domain: [0, 20] },
      y: { label: 'height', unit: 'mm', domain: [1, 100], logarithmic: true },
      series: [],
      summary: 'Nothing.',
    }),
  }),
  along: 'x',
  within: 0.03,
  answer: ({ radius }) => radius * 1e6,
  errors: [
    { id: 'twice', reason: prose`Twice.`, answer: ({ radius }) => 2 * radius * 1e6 },
    { id: 'beyond', reason: prose`Beyond the chart.`, answer: () => 25 },
  ],
});
const markedUp = markTask({ ...marked, id: 'marked-up', along: 'y', answer: () => 10, errors: [] });

const lessonOf = (...tasks: Task[]): Lesson => ({
  id: 'trial',
  title: 'Trial',
  about: 'A trial.',
  minutes: 1,
  draw: () => ({}),
  tasks,
});
const lesson = lessonOf(typed, signed, chosen, marked, markedUp);
const opened = openCase(lesson, 1);
const told = (taskId: string, given: string | number) => judge(lesson, opened, taskId, given);

describe('numbers typed with their unit', () => {
  it.each(['6,56', '6.56 µm', '6,56 um', '0.00656 mm', '6\u202f560 nm', '6.56\u2009μm', '6.65'])(
    '%s is right',
    (text) => {
      expect(radius).toBeCloseTo(6.557e-6, 8);
      expect(told('typed', text)).toEqual({ kind: 'right' });
    },
  );

  it('an error is told as that error, in any unit', () => {
    expect(told('typed', '13.1')).toMatchObject({ kind: 'error', error: { id: 'diameter' } });
    expect(told('typed', '0.0131 mm')).toMatchObject({ kind: 'error', error: { id: 'diameter' } });
  });

  it.each([
    ['6.56 mm', 'That is a thousand times too large. Look at the prefix of the unit.'],
    ['6.56 nm', 'That is a thousand times too small. Look at the prefix of the unit.'],
    ['6.56 m', 'That is a million times too large. Look at the prefix of the unit.'],
    ['65.6 µm', 'That is ten times too large. Look at the unit and at the decimal point.'],
    ['-6.56 µm', 'The size is right, but not the sign.'],
    ['7.5', 'That is too large.'],
    ['5', 'That is too small.'],
    ['40', 'That is far too large.'],
    ['1', 'That is far too small.'],
    ['0', 'It is not zero.'],
    ['-12 µm', 'The sign is not right, and without it the number is too large.'],
    ['-3 µm', 'The sign is not right, and without it the number is too small.'],
  ])('%s: %s', (text, hint) => {
    expect(told('typed', text)).toEqual({ kind: 'other', hint });
  });

  it('sign and size are told apart', () => {
    expect(told('signed', '6.56')).toEqual({ kind: 'other', hint: 'The size is right, but not the sign.' });
    expect(told('signed', '12')).toEqual({
      kind: 'other',
      hint: 'The sign is not right, and without it the number is too large.',
    });
    expect(told('signed', '0')).toEqual({ kind: 'other', hint: 'It is not zero.' });
    expect(told('signed', '-3')).toEqual({
      kind: 'other',
      hint: 'The sign is right, but the number is too small.',
    });
    expect(told('signed', '-30')).toEqual({
      kind: 'other',
      hint: 'The sign is right, but the number is far too large.',
    });
  });

  it.each([
    ['', 'The field is empty; a length such as 1\u202fµm belongs here.'],
    ['about seven', "'about seven' has no number that can be read; a length such as 1\u202fµm belongs here."],
    ['6.56 µJ', "'6.56 µJ' is an energy; a length such as 1\u202fµm belongs here."],
    [
      '6.56 furlongz',
      "The unit 'furlongz' in '6.56 furlongz' is not known; a length such as 1\u202fµm belongs here.",
    ],
  ])('%s cannot be judged', (text, message) => {
    expect(() => told('typed', text)).toThrow(Problem);
    expect(() => told('typed', text)).toThrow(message);
  });

  it('the solution has its unit', () => {
    expect(solution(lesson, opened, 'typed')).toEqual({ value: radius, text: '6.557\u202fµm' });
    expect(solution(lesson, opened, 'signed').text).toBe('\u22126.557\u202fµm');
  });
});

describe('choices and marks', () => {
  it('an option is right, an error, or neither', () => {
    expect(told('chosen', 'two')).toEqual({ kind: 'right' });
    expect(told('chosen', 'one')).toMatchObject({ kind: 'error', error: { id: 'first' } });
    expect(told('chosen', 'three')).toEqual({ kind: 'other', hint: 'That is not what happens here.' });
    expect(solution(lesson, opened, 'chosen')).toEqual({ value: 'two', text: 'The second' });
  });

  it('a mark counts within a part of the axis', () => {
    expect(told('marked', radius * 1e6 + 0.59)).toEqual({ kind: 'right' });
    expect(told('marked', radius * 1e6 + 0.61)).toEqual({
      kind: 'other',
      hint: 'That is too far to the right.',
    });
    expect(told('marked', radius * 1e6 - 0.61)).toEqual({
      kind: 'other',
      hint: 'That is too far to the left.',
    });
    expect(told('marked', 2 * radius * 1e6 - 0.5)).toMatchObject({ kind: 'error', error: { id: 'twice' } });
    expect(solution(lesson, opened, 'marked').text).toBe('6.557\u202fµm');
  });

  it('on an axis of equal factors, a part of it is a factor', () => {
    const factor = 100 ** 0.03;
    expect(told('marked-up', 10 * factor * 0.99)).toEqual({ kind: 'right' });
    expect(told('marked-up', 10 * factor * 1.01)).toEqual({ kind: 'other', hint: 'That is too high.' });
    expect(told('marked-up', (10 / factor) * 0.99)).toEqual({ kind: 'other', hint: 'That is too low.' });
  });

  it('what lies beyond the chart is no answer', () => {
    expect(opened.at('marked').errors.map(({ error }) => error.id)).toEqual(['twice']);
  });
});

describe('cases that do not do', () => {
  it('are drawn again, the same numbers going on', () => {
    const drawn: number[] = [];
    const fussy: Lesson = {
      ...lessonOf(typed),
      draw: (random) => {
        drawn.push(random.uniform());
        // Two of three draws have a stop inside the step, and no light.
        return drawn.length < 3 ? { 'laser.beamDiameter': 6e-3, 'plate.apertureDiameter': 5e-3 } : {};
      },
      tasks: [
        numberTask({
          ...typed,
          from: { radius: focusRadius },
          answer: ({ radius }) => (drawn.length < 3 ? Number.NaN : radius),
        }),
      ],
    };
    const found = openCase(fussy, 5);
    expect(drawn).toHaveLength(3);
    expect(new Set(drawn).size).toBe(3);
    expect(found.at('typed').right).toBeCloseTo(radius, 12);
  });

  it('are refused at last, by name', () => {
    const alike = numberTask({
      ...typed,
      errors: [{ id: 'nearly', reason: prose`!`, answer: ({ radius }) => radius * 1.05 }],
    });
    expect(() => openCase(lessonOf(alike), 5)).toThrow(/Lesson trial, seed 5.*'nearly'.*'right'/);
    const twins = numberTask({
      ...typed,
      errors: ['one', 'two'].map((id) => ({
        id,
        reason: prose`!`,
        answer: ({ radius }: { radius: number }) => 2 * radius,
      })),
    });
    expect(() => openCase(lessonOf(twins), 5)).toThrow(/'two'.*'one'/);
  });

  it('a task that is not there is a mistake', () => {
    expect(() => told('nowhere', 1)).toThrow("The lesson trial has no task 'nowhere'.");
  });
});
