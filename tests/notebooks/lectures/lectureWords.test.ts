import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { initialState } from '../../../lib/graph/state.ts';
import { noStudies } from '../../../lib/graph/studies.ts';
import { lectureSize, stepSize } from '../../../notebooks/lectures/lectureWords.ts';
import { studentsDesign } from '../../../notebooks/lectures/studentsDesign.ts';
import { tableLecture } from '../../lectures.ts';

const step = (minutes?: number) => ({
  id: 'a',
  title: 'A',
  pieces: [],
  ...(minutes === undefined ? {} : { minutes }),
});

describe('how long a lecture is', () => {
  it.each([
    [[], 'No step yet'],
    [[step()], '1 step, without times'],
    [[step(1)], '1 step, 1 minute'],
    [[step(4.5), step(2)], '2 steps, 6.5 minutes'],
    [[step(4), step(), step(1)], '3 steps, 5 minutes for 2 of them'],
    [[step(0.1), step(0.2)], '2 steps, 0.3 minutes'],
  ])('%j: %s', (steps, said) => {
    expect(lectureSize({ steps })).toBe(said);
  });
});

describe('what a step holds', () => {
  const [first, second, third] = tableLecture.steps;
  it.each([
    [first!, '2 pieces · with notes · 4.5 min'],
    [second!, '3 pieces · sets raw beam diameter 6\u202fmm and stop ‘no stop’ · asks the room'],
    [third!, 'nothing on it yet'],
    [{ ...third!, pieces: [first!.pieces[0]!], sets: { 'later.thing': 3 } }, '1 piece · sets later.thing'],
    [
      { ...third!, sets: { 'plate.stop': 'open', 'lens.focalLength': 0.1, 'laser.beamDiameter': 5e-3 } },
      'nothing on it yet · sets 3 inputs',
    ],
  ])('%#', (one, said) => {
    expect(stepSize(designGraph, one).replaceAll('\u00a0', '\u202f')).toBe(said);
  });
});

it('students get one lecture, without what the lecturer says', () => {
  const other = { ...tableLecture, id: 'lecture2' };
  const studies = { ...noStudies, lectures: [other, tableLecture], texts: { purpose: 'Rain.' } };
  const design = { ...initialState(designGraph), name: 'Rain', studies };
  const given = studentsDesign(design, 'lecture1');
  expect(given).toMatchObject({
    name: 'Rain',
    inputs: design.inputs,
    studies: { texts: { purpose: 'Rain.' } },
  });
  expect(given.studies!.lectures.map(({ id }) => id)).toEqual(['lecture1']);
  expect(JSON.stringify(given.studies)).not.toContain('Hold the plate up');
  const { notes: _, ...plain } = tableLecture.steps[0]!;
  expect(given.studies!.lectures[0]!.steps).toEqual([plain, ...tableLecture.steps.slice(1)]);
});
