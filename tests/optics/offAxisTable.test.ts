import { describe, expect, test } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { fieldOffAxis } from '../../lib/optics/azimuthalHarmonics.ts';
import { readOffAxisTable, tabulateOffAxis } from '../../lib/optics/offAxisTable.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const beams = [
  {},
  { x0: 0.2, qx: 0.6 },
  { x0: 0.1, y0: -0.2, ax: 1.2, ay: 0.85, alpha: -0.3, qx: -0.4, qy: 0.5 },
];

describe('table of an off-axis field', () => {
  test.each(beams)('read at seeded points is the field, beam %j', (beam) => {
    const random = createRandom(7105);
    for (const stop of [1.4, Number.POSITIVE_INFINITY]) {
      const zones = [
        { outer: 1, phase: 2.8 },
        { outer: stop, phase: 0 },
      ];
      const table = tabulateOffAxis(zones, beam, 0.5, 6);
      const count = cases(400, 60);
      const xi = Float64Array.from({ length: count }, () => random.between(-3.5, 3.5));
      const eta = Float64Array.from({ length: count }, () => random.between(-3.5, 3.5));
      const expected = fieldOffAxis(zones, beam, 0.5, { xi, eta });
      for (let i = 0; i < count; i++) {
        const found = readOffAxisTable(table, xi[i]!, eta[i]!);
        expectClose(found.re, expected.re[i]!, { absolute: 2e-9, source: 'fieldOffAxis' });
        expectClose(found.im, expected.im[i]!, { absolute: 2e-9, source: 'fieldOffAxis' });
      }
    }
  });

  test('the axis and the end can be read, not beyond', () => {
    const table = tabulateOffAxis([{ outer: 2, phase: 0 }], {}, 0, 3);
    expectClose(readOffAxisTable(table, 0, 0).re, 1 - Math.exp(-4), {
      absolute: 2e-9,
      source: 'closed form',
    });
    expect(Math.abs(readOffAxisTable(table, 0, 3).re)).toBeLessThan(0.05);
    expect(() => readOffAxisTable(table, 2.2, 2.2)).toThrow(/outside the table/);
  });
});
