import { describe, test } from 'vitest';
import { findRoot } from '../../lib/numerics/roots.ts';
import { energyThroughStop } from '../../lib/optics/farTail.ts';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

interface Row {
  readonly T: number | null;
  readonly v_half: number;
  readonly v_e2: number;
  readonly K_fwhm: number;
  readonly K_e2: number;
  readonly transmitted: number | null;
  readonly axial: number | null;
}

const rows: Row[] = reference('apertures').truncated_gaussian.rows;
const gaussianRows = rows.filter(
  (row): row is Row & { T: number; transmitted: number; axial: number } => row.T !== null,
);
const paper = 'H. Urey, Appl. Opt. 43, 620 (2004), coefficients from memory, tested to 1 %';

/**
 * v = πr/(λN) = 2ϱR/w at which the irradiance in the focus first falls to `level` of its peak; T = w/R. At v = 6 the
 * irradiance is below 0.02 for every T ≥ 0.5, as in all rings beyond.
 */
function radiusAtLevel(T: number, level: number): number {
  const stop = [{ outer: 1 / T, phase: 0 }];
  const onAxis = fieldAt(stop, 0, 0).re ** 2;
  return findRoot((v) => fieldAt(stop, (v * T) / 2, 0).re ** 2 / onAxis - level, 0.5, 6);
}

/** Full width over λN = λ f/(2R): 2r = 2vλN/π. */
const widthFactor = (v: number) => (2 * v) / Math.PI;

describe('truncated Gaussian beam in the focus', () => {
  test.each(gaussianRows)('T = w/R = $T: exact widths, energy and height', (row) => {
    const source = 'apertures.json, 25 digits, eleven or more kept';
    expectClose(radiusAtLevel(row.T, 0.5), row.v_half, { relative: 1e-10, source });
    expectClose(radiusAtLevel(row.T, Math.exp(-2)), row.v_e2, { relative: 1e-10, source });
    expectClose(energyThroughStop(1 / row.T), row.transmitted, { relative: 1e-11, source });
    const onAxis = fieldAt([{ outer: 1 / row.T, phase: 0 }], 0, 0).re ** 2;
    expectClose(2 * row.T ** 2 * onAxis, row.axial, { relative: 1e-11, source });
  });

  test('T = 10⁴ is the uniform disc', () => {
    const uniform = rows.find((row) => row.T === null)!;
    const source = 'apertures.json, uniform row; (R/w)² = 1e-8';
    expectClose(radiusAtLevel(1e4, 0.5), uniform.v_half, { relative: 1e-8, source });
    expectClose(radiusAtLevel(1e4, Math.exp(-2)), uniform.v_e2, { relative: 1e-8, source });
  });

  test.each(gaussianRows.filter(({ T }) => T >= 0.5 && T <= 3))(
    'T = $T: published fits to 1 per cent',
    ({ T }) => {
      const fwhm = 1.036 - 0.058 / T + 0.156 / T ** 2;
      const e2 = 1.654 - 0.105 / T + 0.28 / T ** 2;
      expectClose(widthFactor(radiusAtLevel(T, 0.5)), fwhm, { relative: 0.01, source: paper });
      expectClose(widthFactor(radiusAtLevel(T, Math.exp(-2))), e2, { relative: 0.01, source: paper });
    },
  );
});
