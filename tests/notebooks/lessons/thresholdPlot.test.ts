import { expect, it } from 'vitest';
import { gaussianFit } from '../../../lib/design/fits.ts';
import { createRandom } from '../../../lib/numerics/random.ts';
import { fitGaussianMarks } from '../../../lib/process/gaussianMarks.ts';
import { drawnMarks } from '../../../notebooks/lessons/drawnMarks.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { thresholdPlot } from '../../../notebooks/lessons/thresholdPlot.ts';
import {
  lineFigure,
  marksFigure,
  threeEnergiesFigure,
} from '../../../notebooks/lessons/thresholdPlotFigures.ts';
import { cases } from '../../cases.ts';
import { expectClose } from '../../close.ts';
import { outcomesOf } from '../designOutcomes.ts';
import { caseWith, chosenBy, expectByHand, figureOf } from './byHand.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(thresholdPlot);

/** Diameters read at 3, 6, 12 and 24 µJ. */
const read = [
  [3, 23.55],
  [6, 33.3],
  [12, 40.79],
  [24, 47.1],
] as const;
const rows = read.map(([energy, diameter], i) => ({
  row: i + 2,
  energy: energy * 1e-6,
  area: (Math.PI / 4) * (diameter * 1e-6) ** 2,
  pulses: 1,
}));
const opened = caseWith(thresholdPlot, {
  'laser.beamDiameter': 2.5e-3,
  'plate.stop': 'open',
  'lens.focalLength': 0.1327,
  'laser.beamPropagationRatio': 1.15,
  'laser.pulseEnergy': 3e-6,
  'threshold.source': 'typed',
  'threshold.typedFluence': 2387,
  'threshold.fitModel': 'gaussian',
  'threshold.spotTable': { name: 'by hand', rows, bad: [], unmeasured: [], ignored: [] },
});

it('by hand: each doubling adds the same to D²', () => {
  // At 2, 4 and 8 times the threshold D² = 2w² ln 2, 2w² ln 4, 2w² ln 8: steps of 2w² ln 2.
  expect(opened.at('doubling').right).toBe('squares-add');
  expect(chosenBy(opened, 'doubling')).toEqual({
    'diameter-with-energy': 'diameters-double',
    'area-with-energy': 'squares-double',
    'diameter-in-steps': 'diameters-add',
  });
});

it('by hand: slope, crossing and threshold fluence', () => {
  // D²: 554.6, 1108.9, 1663.8, 2218.4 µm²; from row to row 554.6 for ln 2 = 0.6931: 800 a unit of ln E, all alike.
  // 554.6/800 = 0.6932 below ln 3 = 1.0986 the line meets zero: ln E = 0.4054, E_th = 1.5 µJ (Liu 1982).
  expectByHand(opened, 'zero', 0.4054, { 'smallest-mark': 1.0986, 'one-microjoule': 0 }, 2e-3);
  // w² = 800/2 = 400 µm², w = 20.0 µm; √800 = 28.28; 20/√2 = 14.14; 20 · 1.1774 = 23.55;
  // λf/(πw) = 1.03 µm · 132.7 mm/(π · 2.5 mm) = 17.40 µm
  const widths = {
    diameter: 40e-6,
    'factor-two': 28.28e-6,
    'one-over-e': 14.14e-6,
    'full-width': 23.55e-6,
    'from-formula': 17.4e-6,
  };
  expectByHand(opened, 'radius', 20e-6, widths, 1e-3);
  // 2 · 1.5 µJ/(π · 400 µm²) = 3 µJ/1256.6 µm² = 0.2387 J/cm²
  const fluences = { 'mean-for-peak': 1193.7, 'diameter-for-radius': 596.8, 'one-over-e': 4775 };
  expectByHand(opened, 'threshold-fluence', 2387, fluences, 2e-3);
});

it('by hand: a Rayleigh length out of focus', () => {
  // With M² = 1.15, w² grows by 1 + (1/1.15)² = 1.756: slope 2w² and crossing F_th πw²/2 with it.
  expect(opened.at('defocused').right).toBe('steeper-right');
  expect(chosenBy(opened, 'defocused')).toEqual({
    'energy-of-surface': 'steeper-same',
    'radius-in-focus': 'same-right',
    'other-way': 'flatter-left',
  });
});

it('marks are drawn with the radius and threshold that they are drawn for', () => {
  for (let seed = 1; seed <= cases(200, 20); seed++) {
    const { rows } = drawnMarks(createRandom(seed), { radius: 20e-6, thresholdEnergy: 1.5e-6 });
    const marks = rows.map(({ area, energy, pulses, row }) => ({ area, energy: energy!, pulses, row, z: 0 }));
    const fit = fitGaussianMarks(marks);
    // Scatter of 0.6 % a diameter, nine marks: four standard deviations.
    expectClose(fit.beamRadius, 20e-6, { relative: 0.03, source: 'Liu 1982' });
    expectClose(fit.thresholdEnergy, 1.5e-6, { relative: 0.05, source: 'Liu 1982' });
  }
});

it('the charts leave room for the crossing, and only the second shows it', () => {
  for (let seed = 1; seed <= cases(40, 10); seed++) {
    const one = openCase(thresholdPlot, seed);
    const { inputs, right } = one.at('zero');
    const asked = figureOf(marksFigure, inputs);
    expect(asked.series.map(({ label }) => label)).toEqual(['measured']);
    expect(asked.x.domain[0] + 0.3).toBeLessThan(right as number);
    expect(asked.summary).not.toContain('zero');
    const line = figureOf(lineFigure, inputs);
    const [low, high] = line.marks!;
    const rise = (high!.y! - low!.y!) / (high!.x! - low!.x!);
    const radius = one.at('radius').right as number;
    expectClose(Math.sqrt(rise / 2), radius * 1e6, { relative: 1e-9, source: '2w² a unit of ln E' });
    const outcome = outcomesOf(inputs)(gaussianFit.id);
    expect(outcome).not.toHaveProperty('problem');
  }
});

it('three energies are drawn as multiples', () => {
  const { series } = figureOf(threeEnergiesFigure, opened.inputs);
  expect(series.map(({ label }) => label)).toEqual(['3\u202fµJ', '6\u202fµJ', '12\u202fµJ']);
  const tops = series.map(({ y }) => Math.max(...y));
  expectClose(tops[1]! / tops[0]!, 2, { relative: 1e-12 });
  expectClose(tops[2]! / tops[0]!, 4, { relative: 1e-12 });
});
