import { describe, expect, it } from 'vitest';
import { beamSize } from '../../../notebooks/lessons/beamSize.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { expectClose } from '../../close.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(beamSize);

describe('one case by hand: 4.6 mm, widened 1.68 times, on a step of 10 mm', () => {
  const one = openCase(beamSize, 3);
  const right = (id: string) => one.at(id).right;
  const rounding = { relative: 5e-4, source: 'worked by hand to four digits' };

  it('has these inputs', () => {
    expect(one.inputs).toMatchObject({
      'laser.beamDiameter': 4.6e-3,
      'expander.magnification': 1.68,
      'plate.stepDiameter': 10e-3,
      'plate.stop': 'open',
    });
  });

  it('1/e² radius', () => {
    // 4.6 mm · 1.68 = 7.728 mm wide at the plate; half of it is 3.864 mm.
    expectClose(right('radius') as number, 3.864, rounding);
  });

  it('step ratio', () => {
    // 10 mm / 7.728 mm = 1.2940.
    expectClose(right('ratio') as number, 1.294, rounding);
  });

  it('what stands in the focus', () => {
    // κ² = 1.2940² = 1.6744, e^−κ² = 0.18742.
    const exponential = 0.18742;
    // The middle has no curvature where (1 + κ²) e^−κ² = ½: 2.6744 · 0.18742 = 0.50124, a quarter of a per cent away.
    expect(Math.abs(2.6744 * exponential - 0.5)).toBeLessThan(0.002);
    // And it is bright: on the axis (1 − 2 e^−κ²)² = (1 − 0.37484)² = 0.3908 of the beam without a step.
    expectClose((1 - 2 * exponential) ** 2, 0.3908, rounding);
    expect(right('focus')).toBe('flat');
  });

  it('magnification', () => {
    // Flattest at 1.295510 (physics, §1): 10 mm / 1.29551 = 7.7190 mm; / 4.6 mm = 1.6780.
    expectClose(right('magnification') as number, 1.678, rounding);
  });
});
