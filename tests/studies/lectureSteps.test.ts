import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { mostPieces, mostSteps } from '../../lib/design/savedLectures.ts';
import { type DesignState, initialState } from '../../lib/graph/state.ts';
import { noStudies, type OwnBlock } from '../../lib/graph/studies.ts';
import { Problem } from '../../lib/problem.ts';
import {
  addStepPiece,
  addSteps,
  askInStep,
  changeStepPiece,
  duplicateStep,
  leaveInStep,
  moveStep,
  moveStepPiece,
  noteStep,
  setInStep,
  stepAt,
  takeOutStep,
  takeOutStepPiece,
  timeStep,
  titleStep,
} from '../../lib/studies/lectureSteps.ts';
import { lectureOf } from '../../lib/studies/lectures.ts';
import { tableLecture } from '../lectures.ts';

type Design = Omit<DesignState, 'revision'>;
const start: Design = {
  ...initialState(designGraph),
  studies: { ...noStudies, lectures: [{ ...tableLecture, id: 'lecture2', title: 'Other' }, tableLecture] },
};
const lecture = 'lecture1';
const first = { lecture, step: 'step1' };
const second = { lecture, step: 'step2' };
const ids = (design: Design) => lectureOf(design, lecture).steps.map(({ id }) => id);
const text = (words: string): OwnBlock => ({ kind: 'text', text: words });

describe('steps of a lecture', () => {
  it('are added anywhere, under ids that none has', () => {
    const { design, ids: added } = addSteps(start, lecture, 1, [
      { title: ' A ', pieces: [] },
      { title: 'B', pieces: [text('b')], minutes: 2 },
    ]);
    expect(added).toEqual(['step4', 'step5']);
    expect(ids(design)).toEqual(['step1', 'step4', 'step5', 'step2', 'step3']);
    expect(stepAt(design, { lecture, step: 'step5' })).toEqual({
      id: 'step5',
      title: 'B',
      pieces: [text('b')],
      minutes: 2,
    });
  });

  it('are duplicated, moved and taken out; beyond the ends nothing moves', () => {
    const twice = duplicateStep(start, second);
    expect(ids(twice.design)).toEqual(['step1', 'step2', 'step4', 'step3']);
    const { id: _, ...copy } = stepAt(twice.design, { lecture, step: 'step4' });
    expect({ id: 'step2', ...copy }).toEqual(tableLecture.steps[1]);
    expect(ids(moveStep(start, lecture, 2, 0))).toEqual(['step3', 'step1', 'step2']);
    expect(ids(moveStep(start, lecture, 0, 2))).toEqual(['step2', 'step3', 'step1']);
    for (const [from, to] of [
      [0, -1],
      [2, 3],
      [1, 1],
    ] as const)
      expect(moveStep(start, lecture, from, to)).toBe(start);
    expect(ids(takeOutStep(start, second))).toEqual(['step1', 'step3']);
  });

  it('take a title, notes and minutes; emptied they say nothing', () => {
    expect(stepAt(titleStep(start, first, 'New'), first).title).toBe('New');
    expect(stepAt(noteStep(start, first, 'Say *this*.'), first).notes).toBe('Say *this*.');
    expect(stepAt(noteStep(start, first, ' \n'), first)).not.toHaveProperty('notes');
    for (const [typed, minutes] of [
      ['4', 4],
      [' 2,5 ', 2.5],
      ['3 min', 3],
      ['1.5 minutes', 1.5],
    ] as const)
      expect(stepAt(timeStep(start, first, typed), first).minutes).toBe(minutes);
    expect(stepAt(timeStep(start, first, ''), first)).not.toHaveProperty('minutes');
  });

  it('set inputs, checked, and leave them again', () => {
    const set = setInStep(designGraph, start, first, { 'lens.focalLength': 0.2 });
    expect(stepAt(set, first).sets).toEqual({ 'lens.focalLength': 0.2 });
    expect(stepAt(leaveInStep(set, first, 'lens.focalLength'), first)).not.toHaveProperty('sets');
    expect(stepAt(leaveInStep(start, second, 'plate.stop'), second).sets).toEqual({
      'laser.beamDiameter': 6e-3,
    });
    expect(set.inputs).toBe(start.inputs);
  });

  it('change nothing of other lectures', () => {
    const next = titleStep(start, first, 'New');
    expect(lectureOf(next, 'lecture2')).toBe(lectureOf(start, 'lecture2'));
  });
});

describe('what the room is asked', () => {
  const ask = { question: 'What now?', options: ['  It  rises ', '', 'It sinks'], from: 9 };

  it('keeps answers of a line each, and withholds no more than there is', () => {
    expect(stepAt(askInStep(start, first, ask), first).ask).toEqual({
      question: 'What now?',
      options: ['It rises', 'It sinks'],
      from: 2,
    });
    expect(stepAt(askInStep(start, second, undefined), second)).not.toHaveProperty('ask');
  });

  it('withholds the same pieces when others come and go', () => {
    const from = (design: Design) => stepAt(design, second).ask!.from;
    expect(from(addStepPiece(start, second, 0, text('a')))).toBe(2);
    expect(from(addStepPiece(start, second, 1, text('a')))).toBe(1);
    expect(from(addStepPiece(start, second, 3, text('a')))).toBe(1);
    expect(from(takeOutStepPiece(start, second, 0))).toBe(0);
    expect(from(takeOutStepPiece(start, second, 1))).toBe(1);
  });
});

describe('pieces of a step', () => {
  const kinds = (design: Design) => stepAt(design, second).pieces.map(({ kind }) => kind);

  it('are added, changed, moved and taken out', () => {
    expect(kinds(addStepPiece(start, second, 3, text('a')))).toEqual(['text', 'controls', 'values', 'text']);
    expect(stepAt(changeStepPiece(start, second, 0, text('b')), second).pieces[0]).toEqual(text('b'));
    expect(kinds(moveStepPiece(start, second, 0, 2))).toEqual(['controls', 'values', 'text']);
    expect(moveStepPiece(start, second, 0, -1)).toBe(start);
    expect(kinds(takeOutStepPiece(start, second, 1))).toEqual(['text', 'values']);
  });
});

describe('what cannot be is said in words', () => {
  const draft = { title: 'A', pieces: [] };
  const many = Array.from({ length: mostPieces }, () => text('a'));
  const full = addSteps(start, lecture, 0, [{ title: 'Full', pieces: many }]);
  it.each<[string, () => unknown, RegExp]>([
    ['no title', () => titleStep(start, first, ''), /title of the step is empty/],
    [
      'too many steps',
      () => addSteps(start, lecture, 0, Array(mostSteps).fill(draft)),
      /63 steps are too many; up to 60/,
    ],
    [
      'a word for minutes',
      () => timeStep(start, first, 'soon'),
      /‘soon’ is no time for a step; type minutes/,
    ],
    ['no minutes', () => timeStep(start, first, '0'), /‘0’ is no time/],
    ['a day', () => timeStep(start, first, '1440'), /up to 240/],
    ['a book for notes', () => noteStep(start, first, 'x'.repeat(20_001)), /notes has 20001 signs/],
    [
      'no question',
      () => askInStep(start, first, { question: ' ', options: [], from: 0 }),
      /question is empty/,
    ],
    [
      'ten answers',
      () => askInStep(start, first, { question: 'a', options: [...'abcdefghij'], from: 0 }),
      /10 answers are too many; up to 9 go, one for each number key/,
    ],
    [
      'a value out of range',
      () => setInStep(designGraph, start, first, { 'lens.focalLength': -1 }),
      /Focal length of −1/,
    ],
    [
      'what follows from others',
      () => setInStep(designGraph, start, first, { 'spot.width': 1 }),
      /cannot be set/,
    ],
    [
      'too many pieces',
      () => addStepPiece(full.design, { lecture, step: full.ids[0]! }, 0, text('a')),
      /30 pieces stand in this step, and no more fit/,
    ],
    ['a step that is gone', () => stepAt(takeOutStep(start, first), first), /step has been taken out; undo/],
  ])('%s', (_words, act, says) => {
    expect(act).toThrow(Problem);
    expect(act).toThrow(says);
  });
});
