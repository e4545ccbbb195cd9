import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { mostLectures, mostSteps } from '../../lib/design/savedLectures.ts';
import { type DesignState, initialState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { Problem } from '../../lib/problem.ts';
import {
  addLecture,
  copyLecture,
  describeLecture,
  lectureOf,
  lecturesOf,
  takeOutLecture,
} from '../../lib/studies/lectures.ts';
import { tableLecture } from '../lectures.ts';

type Design = Omit<DesignState, 'revision'>;
const start: Design = initialState(designGraph);
const copy = (design: Design, lecture = tableLecture) => copyLecture(designGraph, design, lecture);

describe('lectures of a design', () => {
  it('stand behind each other under ids that none has had', () => {
    const one = addLecture(start, { title: ' For the  talk ' });
    const two = addLecture(one.design, { title: 'Second', about: 'Two hours' });
    expect([one.lecture, two.lecture]).toEqual([
      { id: 'lecture1', title: 'For the talk', steps: [] },
      { id: 'lecture2', title: 'Second', about: 'Two hours', steps: [] },
    ]);
    const third = addLecture(takeOutLecture(two.design, 'lecture1'), { title: 'Third' });
    expect(lecturesOf(third.design).map(({ id }) => id)).toEqual(['lecture2', 'lecture3']);
  });

  it('begin with steps, each under an id of its own', () => {
    const steps = [1, 2].map((count) => ({ title: `Step ${count}`, pieces: [] }));
    const { lecture } = addLecture(start, { title: 'Two', steps });
    expect(lecture.steps.map(({ id, title }) => [id, title])).toEqual([
      ['step1', 'Step 1'],
      ['step2', 'Step 2'],
    ]);
  });

  it('are called and described anew; without words about them nothing is said', () => {
    const { design } = addLecture(start, { title: 'A', about: 'b' });
    expect(lectureOf(describeLecture(design, 'lecture1', 'C', 'd'), 'lecture1')).toEqual({
      id: 'lecture1',
      title: 'C',
      about: 'd',
      steps: [],
    });
    expect(lectureOf(describeLecture(design, 'lecture1', 'C', ' '), 'lecture1')).not.toHaveProperty('about');
  });

  it('leave all else of the design as it is', () => {
    const design = { ...start, name: 'Rain', studies: { ...noStudies, texts: { why: 'so' } } };
    const next = addLecture(design, { title: 'A' }).design;
    expect(next).toEqual({ ...design, studies: { ...design.studies, lectures: lecturesOf(next) } });
  });
});

describe('a copy', () => {
  it('holds the same steps under a title that is free', () => {
    const first = copy(start);
    const second = copy(first.design);
    expect(second.lecture).toMatchObject({ id: 'lecture2', title: `${tableLecture.title} (2)` });
    const plain = ({ steps }: typeof tableLecture) => steps.map(({ id: _, ...step }) => step);
    expect(plain(second.lecture)).toEqual(plain(tableLecture));
  });

  it('sets inputs where the other sets what they make', () => {
    const settable = [...designGraph.quantities.values()].find(
      (one) => one.kind === 'derived' && one.assigns,
    );
    if (settable?.kind !== 'derived') throw new Error('nothing of the design assigns inputs');
    const step = { ...tableLecture.steps[1]!, sets: { [settable.id]: 1e-3 } };
    const { lecture } = copy(start, { ...tableLecture, steps: [step] });
    const expected = settable.assigns!(1e-3 as never);
    expect(lecture.steps[0]!.sets).toEqual(expected);
  });
});

describe('what cannot be is said in words', () => {
  const full = Array.from({ length: mostLectures }).reduce<Design>(
    (design) => addLecture(design, { title: 'One' }).design,
    start,
  );
  it.each<[string, () => unknown, RegExp]>([
    ['no title', () => addLecture(start, { title: ' ' }), /title of the lecture is empty/],
    ['a long title', () => addLecture(start, { title: 'x'.repeat(121) }), /121 signs; up to 120/],
    [
      'long words about it',
      () => describeLecture(addLecture(start, { title: 'A' }).design, 'lecture1', 'A', 'x'.repeat(401)),
      /description of the lecture has 401 signs/,
    ],
    ['one too many', () => addLecture(full, { title: 'x' }), /20 lectures are kept.*Take one out/],
    [
      'too many steps',
      () => addLecture(start, { title: 'x', steps: Array(mostSteps + 1).fill({ title: 'a', pieces: [] }) }),
      /61 steps are too many; up to 60/,
    ],
    ['one that is gone', () => lectureOf(start, 'lecture1'), /taken out; undo brings it back/],
  ])('%s', (_words, act, says) => {
    expect(act).toThrow(Problem);
    expect(act).toThrow(says);
  });
});
