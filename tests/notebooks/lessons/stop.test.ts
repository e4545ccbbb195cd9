import { describe, expect, it } from 'vitest';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { stopLesson } from '../../../notebooks/lessons/stop.ts';
import { cases } from '../../cases.ts';
import { expectClose } from '../../close.ts';
import { irradianceBySum, table } from './bySum.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(stopLesson);

describe('one case by hand: beam 9.5 mm, stop 11.0 mm, step 8.2 mm', () => {
  const one = openCase(stopLesson, 5);
  const right = (id: string) => one.at(id).right;
  const rounding = { relative: 1e-3, source: 'worked by hand to four digits' };

  it('has these inputs', () => {
    expect(one.inputs).toMatchObject({
      'laser.beamDiameter': 4.75e-3,
      'expander.magnification': 2,
      'plate.apertureDiameter': 11e-3,
      'plate.stepDiameter': 8.2e-3,
      'laser.pulseEnergy': 7e-6,
      'laser.wavelength': 1.03e-6,
      'lens.focalLength': 0.1,
    });
  });

  it('energy that passes', () => {
    // R/w = 11/9.5 = 1.15789, squared 1.34072, twice that 2.68144; e^−2.68144 = 0.06846; 1 − 0.06846 = 0.9315.
    expectClose(right('passing') as number, 0.9315, rounding);
  });

  it('which way the middle goes', () => {
    // κ = 8.2/9.5 = 0.86316, κ² = 0.74504, e^−κ² = 0.47471: through the step 1 − 0.47471 = 0.52529.
    const through = 0.52529;
    // Around it without a stop 0.47471, with it 0.47471 − e^−1.34072 = 0.47471 − 0.26166 = 0.21305.
    const [around, stopped] = [0.47471, 0.21305];
    // On the axis the two are subtracted: 0.0506 without a stop, 0.3122 with it: brighter, so the dip is shallower.
    expectClose(through - around, 0.05058, rounding);
    expectClose(through - stopped, 0.31224, rounding);
    expect(right('closing')).toBe('shallower');
  });

  it('radius at half of the peak', () => {
    // w0 = λ f/(π w) = 1.03 µm · 100 mm/(π · 4.75 mm) = 6.9023 µm is the unit of ϱ.
    const plate = { ratio: 0.86316, stop: 1.15789, phase: Math.PI };
    const values = table((rho) => irradianceBySum(plate, rho, 0), 3, 0.01);
    const highest = Math.max(...values);
    const crest = values.indexOf(highest);
    const below = values.findIndex((value, i) => i > crest && value < highest / 2);
    // The half lies between two lines of the table, which are 0.01 apart.
    const [above, under] = [values[below - 1]!, values[below]!];
    const rho = (below - 1 + (above - highest / 2) / (above - under)) * 0.01;
    expectClose(right('edge') as number, rho * 6.9023, rounding);
  });

  it('energy behind the stop', () => {
    // 7 µJ · 0.9315 = 6.521 µJ.
    expectClose(right('energy') as number, 6.521e-6, rounding);
  });
});

it('the middle goes as the explanation says: darker below a step ratio of 0.83, brighter above', () => {
  for (let seed = 1; seed <= cases(200, 40); seed++) {
    const one = openCase(stopLesson, seed);
    const input = (id: string) => one.inputs[id] as number;
    const ratio = input('plate.stepDiameter') / (2 * input('laser.beamDiameter'));
    expect(one.at('closing').right, `seed ${seed}`).toBe(
      ratio < Math.sqrt(Math.LN2) ? 'deeper' : 'shallower',
    );
  }
});
