import { describe, it } from 'vitest';
import { besselI0Scaled, besselJ0, besselJ1 } from '../../lib/numerics/bessel.ts';
import { gaussLegendre } from '../../lib/numerics/gaussLegendre.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const { bessel } = reference('apertures');
// Values are given to 15 decimals, rounded; functions are good to 6e-16.
const near = { absolute: 2e-15, source: 'tests/reference/apertures.json, 25 digits' };

describe('Bessel functions', () => {
  it('J0 and J1 at the values given', () => {
    for (const { x, J0, J1 } of bessel.values) {
      expectClose(besselJ0(x), J0, near);
      expectClose(besselJ1(x), J1, near);
      expectClose(besselJ0(-x), J0, near);
      expectClose(besselJ1(-x), -J1, near);
    }
  });

  it('vanish at their zeros', () => {
    for (const zero of bessel.J0_zeros) expectClose(besselJ0(zero), 0, near);
    for (const zero of bessel.J1_zeros) expectClose(besselJ1(zero), 0, near);
    for (const zero of bessel.J2_zeros) {
      expectClose((2 / zero) * besselJ1(zero) - besselJ0(zero), 0, { ...near, absolute: 4e-15 });
    }
  });

  it('e^{−x} I0(x) equals its integral (1/π) ∫ e^{x(cos θ − 1)} dθ over [0, π]', () => {
    const { nodes, weights } = gaussLegendre(256);
    for (const x of [0, 1e-3, 0.5, 1, 3, 7, 15, 19.99, 20, 20.01, 35, 80, 200, 700]) {
      const integral = nodes.reduce(
        (sum, t, i) => sum + (weights[i]! / 2) * Math.exp(x * (Math.cos((Math.PI / 2) * (1 + t)) - 1)),
        0,
      );
      // 256 terms add up with a few rounding errors.
      expectClose(besselI0Scaled(x), integral, { relative: 1e-14, source: 'DLMF 10.32.1 (memory)' });
    }
  });
});
