import { describe, expect, it } from 'vitest';
import {
  energyInside,
  energyOfPeak,
  gaussianFluences,
  isAcross,
  levelOf,
  radiusFrom,
  type WidthName,
  widthPerRadius,
  widthsOf,
} from '../../lib/optics/widths.ts';
import { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';

const names = Object.keys(widthPerRadius) as WidthName[];
const exact = { relative: 1e-14 };
/** Irradiance of a Gaussian of 1/e² radius w, relative to its peak. */
const irradiance = (r: number, w: number) => Math.exp(-2 * (r / w) ** 2);

describe('widths of a Gaussian beam', () => {
  it('have the ratios that are known in closed form', () => {
    const { radius, diameter, radiusAtE, diameterAtE, fullWidth, deviation } = widthsOf(3e-3);
    expectClose(diameter / fullWidth, 1.699, { absolute: 5e-4, source: '2w = 1.699 FWHM' });
    expectClose(diameter, 4 * deviation, { ...exact, source: 'D4σ of a Gaussian is 2w' });
    expectClose(radius, 2 * deviation, { ...exact, source: 'w = 2σ' });
    expectClose(radius / radiusAtE, Math.sqrt(2), { ...exact, source: '1/e² against 1/e: √2' });
    expectClose(diameterAtE, 2 * radiusAtE, exact);
    expectClose(fullWidth / deviation, 2.3548, { absolute: 5e-5, source: 'FWHM = 2.3548 σ' });
  });

  it('lie where the irradiance has the level they are named by', () => {
    const widths = widthsOf(7e-6);
    const at = (name: WidthName) => irradiance(widths[name] / (isAcross[name] ? 2 : 1), 7e-6);
    expectClose(at('radius'), 1 / Math.E ** 2, exact);
    expectClose(at('diameter'), 1 / Math.E ** 2, exact);
    expectClose(at('radiusAtE'), 1 / Math.E, exact);
    expectClose(at('diameterAtE'), 1 / Math.E, exact);
    expectClose(at('fullWidth'), 0.5, exact);
    for (const name of names) expectClose(levelOf(name), at(name), { relative: 1e-12 });
  });

  it('hold second moments: σ² is the variance along one axis', () => {
    // ∫x²I / ∫I by sums over a square of 6 w, error of the sum far below 1e-9 for so smooth a function.
    const w = 2;
    let [weight, second] = [0, 0];
    for (let x = -6; x <= 6; x += 0.02) {
      weight += irradiance(x, w);
      second += x * x * irradiance(x, w);
    }
    expectClose(widthsOf(w).deviation, Math.sqrt(second / weight), { relative: 1e-6 });
  });

  it('hold the energy that a sum over rings finds inside', () => {
    const w = 1.5;
    for (const name of names) {
      const end = widthsOf(w)[name] / (isAcross[name] ? 2 : 1);
      const count = 20_000;
      let inside = 0;
      for (let i = 0; i < count; i++) {
        const r = ((i + 0.5) / count) * end;
        inside += irradiance(r, w) * 2 * Math.PI * r * (end / count);
      }
      expectClose(energyInside(name), inside / ((Math.PI * w * w) / 2), { relative: 1e-6 });
    }
  });

  it('come back from each of them', () => {
    for (const name of names)
      for (const w of [1e-7, 4.2e-6, 5e-3, 1]) expectClose(radiusFrom(name, widthsOf(w)[name]), w, exact);
  });

  it('of nothing are refused in words', () => {
    for (const name of names) expect(() => radiusFrom(name, 0)).toThrow(Problem);
    expect(() => widthsOf(-1e-3)).toThrow(Problem);
    expect(() => widthsOf(Number.NaN)).toThrow(Problem);
  });
});

describe('fluence of a Gaussian pulse', () => {
  it('is twice as high on the axis as over the 1/e² circle', () => {
    // 10 µJ, w = 20 µm: 2·1e-5/(π·4e-10) = 15915.494 J/m² = 1.5915494 J/cm².
    const { peak, mean, meanInside } = gaussianFluences(10e-6, 20e-6);
    expectClose(peak, 15915.494309, { relative: 1e-9, source: 'by hand' });
    expectClose(mean, peak / 2, exact);
    expectClose(meanInside / mean, 0.864665, { absolute: 1e-6, source: '1 − e⁻²' });
  });

  it('goes back to its energy', () => {
    for (const energy of [1e-9, 3e-6, 0.2])
      expectClose(energyOfPeak(gaussianFluences(energy, 13e-6).peak, 13e-6), energy, exact);
    expect(() => energyOfPeak(1, 0)).toThrow(Problem);
    expect(() => gaussianFluences(1, 0)).toThrow(Problem);
  });
});
