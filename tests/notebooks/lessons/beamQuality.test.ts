import { describe, expect, it } from 'vitest';
import { beamQuality } from '../../../notebooks/lessons/beamQuality.ts';
import { openCase } from '../../../notebooks/lessons/lessonCase.ts';
import { expectClose } from '../../close.ts';
import { irradianceBySum, table } from './bySum.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(beamQuality);

describe('one case by hand: M² = 1.25, 1030 nm, beam 8.5 mm, lens 160 mm', () => {
  const one = openCase(beamQuality, 5);
  const right = (id: string) => one.at(id).right;
  const rounding = { relative: 1e-3, source: 'worked by hand to four digits' };

  it('has these inputs', () => {
    expect(one.inputs).toMatchObject({
      'laser.wavelength': 1.03e-6,
      'laser.beamPropagationRatio': 1.25,
      'laser.beamDiameter': 5e-3,
      'expander.magnification': 1.7,
      'lens.focalLength': 0.16,
      'laser.pulseEnergy': 2e-6,
      'plate.stepDiameter': 9.2e-3,
      'plate.stop': 'open',
    });
  });

  it('radius of the focus', () => {
    // w0 = 1.03 µm · 160 mm/(π · 4.25 mm) = 12.343 µm; · 1.25 = 15.43 µm.
    expectClose(right('radius') as number, 15.43e-6, rounding);
  });

  it('Rayleigh length', () => {
    // π · 12.343² µm²/1.03 µm = 464.7 µm; · 1.25 = 580.8 µm.
    expectClose(right('rayleigh') as number, 580.8e-6, rounding);
  });

  /** κ = 9.2/8.5 = 1.08235; the blur is Gaussian, of 1/e² radius √(M⁴ − 1) = √(1.5625 − 1) = 0.75 w0. */
  const plate = { ratio: 1.08235, stop: 3, phase: Math.PI };
  const blur = Math.sqrt(1.25 ** 2 - 1);
  const coherent = table((rho) => irradianceBySum(plate, rho, 0), 5, 0.02);
  const at = (rho: number) => {
    const [line, part] = [Math.floor(rho / 0.02), (rho / 0.02) % 1];
    return coherent[line]! * (1 - part) + (coherent[line + 1] ?? 0) * part;
  };
  /** Mean of the coherent light around a place, weighted by the blur; 60 rings of 48 places. */
  const blurred = (rho: number) => {
    let [sum, weights] = [0, 0];
    for (let i = 0; i < 60; i++) {
      const s = ((i + 0.5) * 2 * blur) / 60;
      for (let k = 0; k < 48; k++) {
        const weight = s * Math.exp((-2 * s * s) / blur ** 2);
        const angle = (2 * Math.PI * (k + 0.5)) / 48;
        sum += weight * at(Math.hypot(rho - s * Math.cos(angle), s * Math.sin(angle)));
        weights += weight;
      }
    }
    return sum / weights;
  };

  it('the dip', () => {
    // Perfect: κ² = 1.17148, e^−κ² = 0.30991, axis (1 − 2 · 0.30991)² = 0.1445.
    expectClose(coherent[0]!, 0.1445, rounding);
    const dipOf = (values: readonly number[]) => 1 - values[0]! / Math.max(...values);
    const spread = table(blurred, 1.2, 0.05);
    expect(dipOf(spread)).toBeLessThan(dipOf(coherent) - 0.1);
    expect(right('dip')).toBe('shallower');
  });

  it('the peak fluence of the shaped spot', () => {
    // F0 = 2 · 2 µJ/(π · 12.343² µm²) = 0.8357 J/cm², times the highest value of the blurred profile.
    const highest = Math.max(...table(blurred, 1.2, 0.01));
    expectClose(right('highest') as number, 0.8357 * highest, {
      relative: 5e-3,
      source: 'sum over the blur',
    });
  });

  it('the peak without the plate', () => {
    // 1/1.25² = 0.64.
    expectClose(right('without-plate') as number, 0.64, rounding);
  });
});
