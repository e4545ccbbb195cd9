import { expect, it } from 'vitest';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { pulsesAndDose } from '../../../notebooks/lessons/pulsesAndDose.ts';
import {
  linesFigure,
  sharesAboveFigure,
  sharesFigure,
} from '../../../notebooks/lessons/pulsesAndDoseFigures.ts';
import { cases } from '../../cases.ts';
import { expectClose } from '../../close.ts';
import { caseWith, chosenBy, expectByHand, figureOf } from './byHand.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(pulsesAndDose);

/** λf/(πw) = 1.03 µm · 100 mm/(π · 4 mm) = 8.196 µm; p = 0.4 m/s/200 kHz = 2 µm; lines 6 µm apart. */
const inputs = {
  'laser.beamDiameter': 4e-3,
  'plate.stop': 'open',
  'lens.focalLength': 0.1,
  'laser.repetitionRate': 200e3,
  'scan.speed': 0.4,
  'scan.lineSpacing': 6e-6,
  'threshold.source': 'typed',
  'threshold.typedFluence': 2000,
  // 1.3 · 2000 J/m² · π (8.196 µm)²/2 = 0.2743 µJ
  'laser.pulseEnergy': 0.2743e-6,
};
const opened = caseWith(pulsesAndDose, inputs);

it('by hand: speed and repetition rate doubled', () => {
  // p = 0.8 m/s/400 kHz = 2 µm as before.
  expect(opened.at('faster').right).toBe('same');
  expect(chosenBy(opened, 'faster')).toEqual({ 'speed-alone': 'half', 'rate-alone': 'twice' });
});

it('by hand: pulses per spot', () => {
  // 2 · 8.196/2 = 8.196; w/p = 4.098; · √(ln 2/2) = 0.5887: 4.825; /√2: 5.795
  const errors = { radius: 4.098, 'full-width': 4.825, 'one-over-e': 5.795 };
  expectByHand(opened, 'pulses-per-spot', 8.196, errors, 3e-4);
});

it('by hand: full peaks of one line', () => {
  // √(π/2) = 1.2533; 1.2533 · 8.196/2 = 5.136; /√2 = 3.632
  const errors = { 'pulses-per-spot': 8.196, 'factor-left-out': 4.098, 'one-over-e': 3.632 };
  expectByHand(opened, 'one-line', 5.136, errors, 3e-4);
  // Added up from the picture: 1 + 2 (e^{−2·4/67.17} + e^{−2·16/67.17} + …) = 1 + 2 (0.888 + 0.621 + 0.342 + 0.149 +
  // 0.051 + 0.014 + 0.003) = 5.14
  expectClose(5.14, 5.136, { relative: 1e-3 });
});

it('by hand: full peaks of a field', () => {
  // π · 67.17 µm²/(2 · 2 · 6 µm²) = 211.0/24 = 8.793; lines per spot 16.392/6 = 2.732, 8.196 · 2.732 = 22.39
  const errors = { 'pulses-times-lines': 22.39, 'mean-for-peak': 17.586, 'one-line': 5.136 };
  expectByHand(opened, 'field', 8.793, errors, 4e-4);
});

it('by hand: pulses above the threshold', () => {
  // Peak 1.3 times the threshold: above within 8.196 √(ln 1.3/2) = 2.968 µm, 0.362 of the radius; at half the peak nowhere.
  expect(opened.at('counting').right).toBe('few');
  expect(chosenBy(opened, 'counting')).toEqual({ 'all-that-touch': 'all', 'mean-for-peak': 'none' });
  // Four times the threshold: √(ln 4/2) = 0.833; at half the peak √(ln 2/2) = 0.589, and that is the same option.
  const high = caseWith(pulsesAndDose, { ...inputs, 'laser.pulseEnergy': 0.844e-6 });
  expect(high.at('counting').right).toBe('most');
  expect(chosenBy(high, 'counting')).toEqual({ 'all-that-touch': 'all' });
});

it('the points of the chart add up to the full peaks of a line', () => {
  for (let seed = 1; seed <= cases(40, 10); seed++) {
    const one = openCase(pulsesAndDose, seed);
    const [pulses] = figureOf(sharesFigure, one.inputs).series;
    const sum = pulses!.y.reduce((all, y) => all + (Number.isNaN(y) ? 0 : y / 100), 0);
    // Beyond 1.8 radii 0.03 % of a Gaussian's line is left; with whole pulses, and 1/p of rounding, below 1 %.
    expectClose(sum, one.at('one-line').right as number, { relative: 0.01 });
  }
});

it('the charts show threshold and lines as they are', () => {
  const above = figureOf(sharesAboveFigure, opened.inputs);
  expectClose(above.marks![0]!.y!, 100 / 1.3, { relative: 1e-3, source: 'peak over threshold' });
  expect(above.summary).toContain('77\u202f% of the peak');
  const centres = figureOf(linesFigure, opened.inputs).series[1]!;
  const places = (column: Float64Array) => [...new Set(column)].filter((at) => !Number.isNaN(at));
  expectClose(places(centres.y)[1]! - places(centres.y)[0]!, 6, { relative: 1e-9 });
  expectClose(places(centres.x)[1]! - places(centres.x)[0]!, 2, { relative: 1e-9 });
});
