import { describe, expect, it } from 'vitest';
import {
  amplitudeAt,
  amplitudeParts,
  axisCurvatureInFocus,
  darkestShare,
  stepRatioFor,
} from '../../lib/optics/matching.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const ustinov =
  'closed form; element after A. V. Ustinov, Computer Optics 41(4), 515 (2017), abstract read; found to 1e-12';

describe('step ratios of a half-wave step', () => {
  it('without a stop: √ln 2, and (1 + κ²) e^{−κ²} = ½', () => {
    expectClose(stepRatioFor('dark', Math.PI)!, Math.sqrt(Math.LN2), { absolute: 1e-11, source: ustinov });
    const flattest = stepRatioFor('flattest', Math.PI)!;
    // 1.295510 has six decimals.
    expectClose(flattest, 1.29551, { absolute: 5e-7, source: ustinov });
    expectClose((1 + flattest ** 2) * Math.exp(-(flattest ** 2)), 0.5, { absolute: 1e-11, source: ustinov });
    expect(stepRatioFor('equal', Math.PI)).toBe(1);
  });

  for (const row of reference('apertures').two_zone.rows) {
    const stop: number | null = row.R_over_w;
    it(`stop ratio ${stop ?? 'endless'}: both ratios to the digits given`, () => {
      const source = 'tests/reference/apertures.json, 25 digits, 12 given';
      // The stop is held against the step, R/a, so each ratio has its own.
      for (const [goal, kappa] of [
        ['dark', row.kappa_null],
        ['flattest', row.kappa_flat],
      ] as const) {
        const at = (change: number) =>
          stepRatioFor(goal, Math.PI, stop === null ? undefined : (stop / kappa) * (1 + change))!;
        // κ is given to 5e-13, and R/a with it; near R/a = √2 the ratio answers ten times as strongly.
        const answer = Math.abs(at(1e-6) - at(-1e-6)) / 2e-6 / kappa;
        expectClose(at(0), kappa, { absolute: 1e-11 + 5e-13 * answer, source });
      }
    });
  }

  it('solves both conditions with X = κ·R/a, for stops of 1.45 to 6 step radii', () => {
    for (const stopPerStep of [1.45, 1.6, 2, 3, 6]) {
      const dark = stepRatioFor('dark', Math.PI, stopPerStep)!;
      const x = dark * stopPerStep;
      expectClose(2 * Math.exp(-dark * dark), 1 + Math.exp(-x * x), { absolute: 1e-10, source: ustinov });
      const flat = stepRatioFor('flattest', Math.PI, stopPerStep)!;
      const y = flat * stopPerStep;
      expectClose(2 * (1 + flat ** 2) * Math.exp(-(flat ** 2)), 1 + (1 + y * y) * Math.exp(-y * y), {
        absolute: 1e-10,
        source: ustinov,
      });
    }
  });

  it('has no dark centre behind a stop of at most √2 step radii', () => {
    for (const stopPerStep of [1.01, 1.2, Math.SQRT2 - 1e-3]) {
      expect(stepRatioFor('dark', Math.PI, stopPerStep)).toBeUndefined();
    }
    expect(stepRatioFor('dark', Math.PI, 1.43)).toBeDefined();
  });

  it('names the least that the axis keeps against the same beam and stop without a step', () => {
    for (const phase of [1, 2.5, Math.PI]) {
      for (const stopPerStep of [1.2, 1.4, 1.6, 3]) {
        let least = Number.POSITIVE_INFINITY;
        for (let ratio = 0.005; ratio < 3; ratio += 0.0005) {
          const parts = amplitudeParts(ratio, stopPerStep);
          const { whole } = parts;
          const { re, im } = amplitudeAt(parts, phase);
          least = Math.min(least, (re * re + im * im) / (whole * whole));
        }
        // The scan steps past the minimum by 2.5e-4 at most and ends at κ = 0.005: errors of order κ².
        expectClose(darkestShare(phase, 1 / stopPerStep ** 2), least, {
          absolute: 3e-5,
          source: 'scan over the step ratio',
        });
      }
    }
  });

  it('is darkest at cos²(φ/2) for κ = √ln 2 and any phase', () => {
    for (const phase of [0.3, 1, 2.5, Math.PI]) {
      const { re, im } = amplitudeAt(amplitudeParts(Math.sqrt(Math.LN2)), phase);
      expectClose(re * re + im * im, Math.cos(phase / 2) ** 2, {
        absolute: 1e-14,
        source: 'closed form',
      });
    }
  });
});

it('curvature on the axis in the focus follows the closed form of two half-wave zones', () => {
  // U0 = 2e^{−κ²} − 1 − s and U2 = 2(1+κ²)e^{−κ²} − 1 − (1+X²)s with s = e^{−X²}, both with the sign of the ring.
  for (const kappa of [0.5, 0.749244, 1, 1.3]) {
    for (const stop of [1.4, 2, 4]) {
      const [step, edge] = [Math.exp(-(kappa ** 2)), Math.exp(-((stop * kappa) ** 2))];
      const u0 = 2 * step - 1 - edge;
      const u2 = 2 * (1 + kappa ** 2) * step - 1 - (1 + (stop * kappa) ** 2) * edge;
      expectClose(axisCurvatureInFocus(kappa, Math.PI, stop), -2 * u0 * u2, {
        absolute: 1e-14,
        source: 'Collins integral on the axis, m0 and m2 of physics.md §1',
      });
    }
  }
});
