import { describe, test } from 'vitest';
import { besselOrders, scaledModifiedBesselOrders } from '../../lib/numerics/besselOrders.ts';
import {
  energyThroughStopOffAxis,
  fieldOffAxis,
  type OffAxisBeam,
  radialHarmonicsOffAxis,
} from '../../lib/optics/azimuthalHarmonics.ts';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

/** One case of the reference file. */
interface Case {
  zones: [number, number][];
  beam: OffAxisBeam;
  energy: number;
  planes: { zeta: number; field: { xi: number; eta: number; re: number; im: number }[] }[];
}

const source = 'panelled Gauss–Legendre × 384 angles: reference/offaxis.json';
const step = [
  { outer: 1, phase: Math.PI },
  { outer: 1.4, phase: 0 },
];

describe('beam off the axis of a round plate', () => {
  test.each(reference('offaxis').cases as (Case & { name: string })[])(
    '$name',
    ({ zones: pairs, beam, energy, planes }) => {
      const zones = pairs.map(([outer, phase]) => ({ outer, phase }));
      expectClose(energyThroughStopOffAxis(zones, beam), energy, { absolute: 1e-13, source });
      for (const { zeta, field } of planes) {
        const points = {
          xi: field.map((p) => p.xi),
          eta: field.map((p) => p.eta),
        };
        const found = fieldOffAxis(zones, beam, zeta, points);
        field.forEach((point, i) => {
          expectClose(found.re[i]!, point.re, { absolute: 2e-13, source });
          expectClose(found.im[i]!, point.im, { absolute: 2e-13, source });
        });
      }
    },
  );

  test.each([0, 0.4, -6])('a centred round beam is the radial integral, ζ = %d', (zeta) => {
    for (const radius of [0, 0.7, 3, 9]) {
      const found = fieldOffAxis(step, {}, zeta, { xi: [0.6 * radius], eta: [-0.8 * radius] });
      const expected = fieldAt(step, radius, zeta);
      expectClose(found.re[0]!, expected.re, { absolute: 1e-13, source: 'focalField.ts' });
      expectClose(found.im[0]!, expected.im, { absolute: 1e-13, source: 'focalField.ts' });
    }
  });

  test('an open plate without step: the elliptical, decentred, astigmatic Gaussian in closed form', () => {
    const beam = { x0: 0.3, y0: -0.2, ax: 1.2, ay: 0.8, alpha: 0.25 };
    const open = [{ outer: Number.POSITIVE_INFINITY, phase: 0 }];
    for (const [xi, eta] of [
      [0, 0],
      [0.8, -1.1],
      [-2, 1.5],
    ] as const) {
      const found = fieldOffAxis(open, beam, 0.7, { xi: [xi], eta: [eta] });
      const x = gaussianLine(beam.ax, beam.x0, 0.7 + beam.alpha, xi);
      const y = gaussianLine(beam.ay, beam.y0, 0.7 - beam.alpha, eta);
      expectClose(found.re[0]!, x.re * y.re - x.im * y.im, { absolute: 1e-12, source: 'Gaussian integral' });
      expectClose(found.im[0]!, x.re * y.im + x.im * y.re, { absolute: 1e-12, source: 'Gaussian integral' });
    }
  });

  test('harmonics of a decentred beam are e^{−x²−x0²} I_m(2x x0) under the integral', () => {
    const x0 = 0.2;
    const rho = 1.1;
    const { highest, re, im } = radialHarmonicsOffAxis(step, { x0 }, 0, Float64Array.of(rho));
    // Two thousand midpoints on each side of the step.
    const sumOver = (from: number, to: number, m: number) => {
      let sum = 0;
      for (let i = 0; i < 2000; i++) {
        const x = from + ((to - from) * (i + 0.5)) / 2000;
        const modified = scaledModifiedBesselOrders(2 * x * x0, m)[m]! * Math.exp(-((x - x0) ** 2));
        sum += modified * besselOrders(2 * rho * x, m)[m]! * x * ((2 * (to - from)) / 2000);
      }
      return sum;
    };
    for (const m of [0, 1, 2, 3]) {
      const sum = sumOver(1, 1.4, m) - sumOver(0, 1, m);
      const [a, b] = m % 2 ? [0, m === 1 ? -sum : sum] : [m === 2 ? -sum : sum, 0];
      expectClose(re[highest + m]!, a, {
        absolute: 1e-7,
        source: 'closed form, midpoint rule of second order',
      });
      expectClose(im[highest + m]!, b, {
        absolute: 1e-7,
        source: 'closed form, midpoint rule of second order',
      });
    }
  });
});

/** (1/√π) ∫ e^{−(s−c)²/a² − iζs² − 2iξs} ds = e^{−c²/a² + b²/g}/√g with g = a⁻² + iζ, b = c/a² − iξ. */
function gaussianLine(a: number, c: number, zeta: number, xi: number): { re: number; im: number } {
  const gRe = a ** -2;
  const size = gRe * gRe + zeta * zeta;
  const bRe = c / (a * a);
  const squareRe = bRe * bRe - xi * xi;
  const squareIm = -2 * bRe * xi;
  const exponentRe = (squareRe * gRe + squareIm * zeta) / size - (c * c) / (a * a);
  const exponentIm = (squareIm * gRe - squareRe * zeta) / size - Math.atan2(zeta, gRe) / 2;
  const amplitude = Math.exp(exponentRe) / size ** 0.25;
  return { re: amplitude * Math.cos(exponentIm), im: amplitude * Math.sin(exponentIm) };
}
