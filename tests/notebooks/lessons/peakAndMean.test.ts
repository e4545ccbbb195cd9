import { describe, expect, it } from 'vitest';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { peakAndMean } from '../../../notebooks/lessons/peakAndMean.ts';
import { expectClose } from '../../close.ts';
import { irradianceBySum, table } from './bySum.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(peakAndMean);

describe('one case by hand: 5.5 µJ, beam 10.25 mm, lens 100 mm', () => {
  const one = openCase(peakAndMean, 5);
  const right = (id: string) => one.at(id).right as number;
  const rounding = { relative: 1e-3, source: 'worked by hand to four digits' };

  it('has these inputs', () => {
    expect(one.inputs).toMatchObject({
      'laser.pulseEnergy': 5.5e-6,
      'laser.beamDiameter': 5e-3,
      'expander.magnification': 2.05,
      'lens.focalLength': 0.1,
      'laser.wavelength': 1.03e-6,
      'plate.stepDiameter': 10e-3,
      'plate.stop': 'open',
      'workpiece.z': 0,
      'threshold.typedFluence': 1600,
    });
  });

  it('peak of the Gaussian', () => {
    // w0 = 1.03 µm · 100 mm/(π · 5.125 mm) = 6.3973 µm; π w0² = 128.57 µm² = 1.2857e-6 cm².
    // 2 · 5.5e-6 J/1.2857e-6 cm² = 8.556 J/cm².
    expectClose(right('gaussian'), 8.556e4, rounding);
  });

  /** In the focus; κ = 10/10.25 = 0.97561. */
  const shaped = table(
    (rho) => irradianceBySum({ ratio: 0.97561, stop: 3, phase: Math.PI }, rho, 0),
    2,
    0.01,
  );
  const highest = Math.max(...shaped);

  it('peak of the shaped spot', () => {
    // 8.556 J/cm² times the highest value of the profile.
    expectClose(right('shaped'), 8.556 * highest, rounding);
  });

  it('the plate taken out', () => {
    // Without the step the axis stands at 1: all tasks lie in the focus.
    expectClose(right('plate-out'), 1 / highest, rounding);
  });

  it('energy that reaches the threshold', () => {
    // 5.5 µJ · 0.16 J/cm² / (8.556 J/cm² · highest).
    expectClose(right('reach'), (5.5e-6 * 0.16) / (8.556 * highest), rounding);
  });

  it('one plane: the peak of the first task is that of the plate taken out', () => {
    expectClose(right('plate-out') * right('shaped') * 1e4, right('gaussian'), { relative: 1e-6 });
  });
});
