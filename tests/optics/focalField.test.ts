import { describe, expect, it } from 'vitest';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { fieldOnAxis, findZeroCurvaturePlanes, irradianceOnAxis } from '../../lib/optics/onAxis.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const source = 'tests/reference/focus.json, adaptive quadrature with 25 digits';

describe('focal field behind round zones', () => {
  for (const item of reference('focus').cases) {
    it(`${item.name}: field to 1e-10`, () => {
      for (const point of item.field) {
        const field = fieldAt(item.zones, point.rho, point.zeta);
        expectClose(field.re, point.re, { absolute: 1e-10, source });
        expectClose(field.im, point.im, { absolute: 1e-10, source });
      }
    });

    it(`${item.name}: on the axis the closed form is the integral`, () => {
      for (const zeta of [-6.5, -2, -0.3, 0, 0.4, 1, 3, 7]) {
        const { u0 } = fieldOnAxis(item.zones, zeta);
        const field = fieldAt(item.zones, 0, zeta);
        expectClose(u0.re, field.re, { absolute: 1e-12 });
        expectClose(u0.im, field.im, { absolute: 1e-12 });
      }
    });

    it(`${item.name}: the ϱ² and ϱ⁴ terms follow the profile near the axis`, () => {
      for (const zeta of [-1, 0, 0.4, 2]) {
        const { value, slope, quartic } = irradianceOnAxis(item.zones, zeta);
        const rho = 0.02;
        const field = fieldAt(item.zones, rho, zeta);
        // The next term is of order ϱ⁶ = 6e-11 times a coefficient of order 1.
        expectClose(field.re ** 2 + field.im ** 2, value + slope * rho ** 2 + quartic * rho ** 4, {
          absolute: 1e-9,
        });
      }
    });

    it(`${item.name}: zero-curvature planes with |ζ| < 7`, () => {
      const planes = findZeroCurvaturePlanes(item.zones);
      expect(planes.length).toBe(item.zeroCurvaturePlanes.length);
      planes.forEach((plane, i) => {
        expectClose(plane, item.zeroCurvaturePlanes[i], { absolute: 1e-9, source });
      });
    });
  }
});
