import { expect, it } from 'vitest';
import { depthAndTilt } from '../../../notebooks/lessons/depthAndTilt.ts';
import {
  departureFigure,
  tiltedSurfaceFigure,
  waistFigure,
} from '../../../notebooks/lessons/depthAndTiltFigures.ts';
import { judge } from '../../../notebooks/lessons/judge.ts';
import type { MarkTask } from '../../../notebooks/lessons/lesson.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { cases } from '../../cases.ts';
import { expectClose } from '../../close.ts';
import { caseWith, chosenBy, expectByHand, figureOf } from './byHand.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(depthAndTilt);

/** κ = 1, R/w = 1.4, in focus; w = 5 mm, f = 100 mm. */
const opened = caseWith(depthAndTilt, {
  'laser.beamDiameter': 5e-3,
  'plate.stepDiameter': 10e-3,
  'plate.apertureDiameter': 14e-3,
  'lens.focalLength': 0.1,
  'scan.fieldWidth': 10e-3,
  'workpiece.tilt': 5e-3,
  'workpiece.heightError': 10e-6,
});

it('by hand: where the depth is left first', () => {
  // The tilt moves both edges by 5 mm · 5 mrad = 25 µm, the middle by nothing; the height error moves all by 10 µm.
  expect(opened.at('edges').right).toBe('both');
  expect(chosenBy(opened, 'edges')).toEqual({
    'behind-alone': 'far',
    'tilt-as-height': 'alike',
    'middle-for-edges': 'middle',
  });
});

it('by hand: spread over the field', () => {
  // 10 mm · 5 mrad = 50 µm, and 2 · 10 µm: 70 µm
  const errors = { half: 35e-6, 'height-once': 60e-6, 'height-left-out': 50e-6 };
  expectByHand(opened, 'spread', 70e-6, errors, 1e-4);
});

it('by hand: end of the depth of focus', () => {
  // z_R = λf²/(πw²) = 1.03 µm · 0.01 m²/(π · 25 mm²) = 131.1 µm; |ζ| < 0.312 at 5 % (profiles.json): 40.9 µm.
  // The mark lies at 0, where the workpiece stands.
  const errors = { 'other-end': -40.9, 'rayleigh-length': 131.1, workpiece: 0 };
  expectByHand(opened, 'end', 40.9, errors, 3e-3);
});

it('by hand: tilt that the depth allows', () => {
  // Depth 2 · 0.312 · 131.1 = 81.8 µm. (81.8 − 20)/10 mm = 6.18 mrad; over half the field 12.36; half the depth
  // with the height once (40.9 − 10)/10 = 3.09; without height error 8.18; with it once 7.18
  const errors = {
    'half-field': 12.36e-3,
    'half-depth': 3.09e-3,
    'half-depth-alone': 4.09e-3,
    'height-left-out': 8.18e-3,
    'height-once': 7.18e-3,
  };
  expectByHand(opened, 'allowed-tilt', 6.18e-3, errors, 2e-3);
});

it('by hand: a Rayleigh length from the focus', () => {
  // w = w0 √2, so the peak 2E/(πw²) is half; 1/√2 = 0.707 where the width is taken for the area, 1/4 squared twice.
  expect(opened.at('rayleigh').right).toBe('half');
  expect(chosenBy(opened, 'rayleigh')).toEqual({
    'still-in-focus': 'same',
    'width-for-area': 'seventy',
    'square-twice': 'quarter',
  });
});

it('a mark counts as the end within a twentieth of the depth', () => {
  const { within } = depthAndTilt.tasks.find(({ id }) => id === 'end') as MarkTask;
  for (let seed = 1; seed <= cases(40, 10); seed++) {
    const one = openCase(depthAndTilt, seed);
    const { axis, right, errors } = one.at('end');
    const [low, high] = axis!.domain;
    const before = errors.find(({ error }) => error.id === 'other-end')!.answer as number;
    const depth = (right as number) - before;
    expect(within * (high - low)).toBeLessThan(0.05 * depth);
    // A sixth short of it is too far.
    expect(judge(depthAndTilt, one, 'end', 0.83 * (right as number)).kind).toBe('other');
  }
});

it('the curve crosses the tolerance where the depth ends', () => {
  for (let seed = 1; seed <= cases(40, 10); seed++) {
    const { inputs, right } = openCase(depthAndTilt, seed).at('end');
    const { series, marks } = figureOf(departureFigure, inputs);
    const { x, y } = series[0]!;
    const i = x.findIndex((at) => at > (right as number));
    const part = ((right as number) - x[i - 1]!) / (x[i]! - x[i - 1]!);
    const read = y[i - 1]! + part * (y[i]! - y[i - 1]!);
    // Straight between planes a fortieth of a Rayleigh length apart.
    expectClose(read, marks![0]!.y!, { absolute: 0.15, source: 'spot.depthEnds' });
  }
});

it('the charts of surface and waist are to the numbers', () => {
  const { series } = figureOf(tiltedSurfaceFigure, opened.inputs);
  const [band, surface] = series;
  expectClose(surface!.y[1]! - surface!.y[0]!, 50, { relative: 1e-4, source: '10 mm · 5 mrad' });
  expectClose(band!.y2![1]! - band!.y[0]!, 70, { relative: 1e-4, source: 'spread' });
  const waist = figureOf(waistFigure, opened.inputs);
  const curve = waist.series[1]!;
  expectClose(curve.y[60]!, 6.557, { relative: 1e-3, source: 'λf/(πw)' });
  expectClose(curve.y[90]!, 6.557 * Math.SQRT2, { relative: 1e-3, source: 'w0√2 at z_R' });
});
