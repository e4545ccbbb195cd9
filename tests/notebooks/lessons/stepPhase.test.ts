import { describe, expect, it } from 'vitest';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { stepPhaseLesson } from '../../../notebooks/lessons/stepPhase.ts';
import { expectClose } from '../../close.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(stepPhaseLesson);

describe('one case by hand: fused silica, 1030 nm', () => {
  const one = openCase(stepPhaseLesson, 5);
  const right = (id: string) => one.at(id).right;
  const rounding = { relative: 1e-3, source: 'worked by hand; index by I. H. Malitson (1965)' };
  /** Sellmeier's sum for λ² in µm², with the coefficients of physics.md §3. */
  const excess = (square: number) =>
    Math.sqrt(
      1 +
        (0.6961663 * square) / (square - 0.0684043 ** 2) +
        (0.4079426 * square) / (square - 0.1162414 ** 2) +
        (0.8974794 * square) / (square - 9.896161 ** 2),
    ) - 1;

  it('has these inputs', () => {
    expect(one.inputs).toMatchObject({
      'laser.wavelength': 1.03e-6,
      'plate.glass': 'fusedSilica',
      'plate.madeHeight': 1.144e-6,
    });
  });

  it('height of half a wave', () => {
    // n(1030 nm) = 1.450044: 1030 nm / (2 · 0.450044) = 1144.3 nm.
    expectClose(right('height') as number, 1144.3e-9, rounding);
  });

  it('second harmonic', () => {
    expect(one.at('harmonic').inputs['laser.wavelength']).toBe(515e-9);
    // n(515 nm) − 1 = 0.4615: 0.4615 · 1144 nm / 515 nm = 1.025 waves, a whole one.
    expectClose(excess(0.515 ** 2), 0.4615, rounding);
    expectClose((0.4615 * 1144) / 515, 1.025, rounding);
    expect(right('harmonic')).toBe('whole');
  });

  it('another laser', () => {
    expect(one.at('place').inputs['laser.wavelength']).toBe(800e-9);
    // n(800 nm) − 1 = 0.45332: 0.45332 · 1144 nm / 800 nm = 0.6482 waves.
    expectClose(excess(0.64), 0.45332, rounding);
    expectClose(right('place') as number, 0.6482, rounding);
  });

  it('the new plate', () => {
    // A step of 794 nm at 800 nm: 0.45332 · 794 / 800 = 0.4499 waves, times 2π = 2.827 rad.
    expect(one.at('made').inputs['plate.madeHeight']).toBe(794e-9);
    expectClose(right('made') as number, 2.827, rounding);
  });
});
