import { describe, expect, test } from 'vitest';
import { gaussLegendre } from '../../lib/numerics/gaussLegendre.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import {
  energyThroughRectangle,
  fieldOfCrossedStep,
  fieldOfSlit,
  halfWidthOfDarkCentre,
  halfWidthOfFlattest,
  irradianceOfCrossedStep,
  type SeparablePlate,
} from '../../lib/optics/crossedStep.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

/** One case of the reference file. */
type Case = SeparablePlate & {
  stop: number | null;
  planes: { zeta: number; field: { xi: number; eta: number; re: number; im: number }[] }[];
};

const square = reference('square');
const source = 'mpmath, 25 digits: reference/square.json';

describe('plates of straight steps', () => {
  test.each(square.cases as (Case & { name: string })[])('$name', (plate) => {
    const stops = { stopX: plate.stop, stopY: plate.stop };
    for (const { zeta, field } of plate.planes) {
      for (const point of field) {
        const found = fieldOfCrossedStep({ ...plate, ...stops }, zeta, [point.xi], [point.eta]);
        expectClose(found.re[0]!, point.re, { absolute: 1e-14, source });
        expectClose(found.im[0]!, point.im, { absolute: 1e-14, source });
      }
    }
  });

  test('a slit against direct quadrature, seeded', () => {
    const random = createRandom(7102);
    const { nodes, weights } = gaussLegendre(256);
    for (let i = 0; i < cases(400, 60); i++) {
      const half = random.between(0.05, 3);
      const zeta = random.between(-8, 8);
      const xi = random.between(-12, 12);
      let re = 0;
      let im = 0;
      nodes.forEach((node, n) => {
        const s = half * node;
        const size = (half * weights[n]! * Math.exp(-s * s)) / Math.sqrt(Math.PI);
        re += size * Math.cos(-zeta * s * s - 2 * xi * s);
        im += size * Math.sin(-zeta * s * s - 2 * xi * s);
      });
      const found = fieldOfSlit(half, zeta, [xi]);
      expectClose(found.re[0]!, re, { absolute: 1e-14, source: '256-point Gauss–Legendre' });
      expectClose(found.im[0]!, im, { absolute: 1e-14, source: '256-point Gauss–Legendre' });
    }
  });

  test('stays finite where e^{−ξ²} underflows, and follows the edges there', () => {
    // Both ends of a slit give e^{−b²} sin(2ξb)/(√π ξ) for ξ ≫ b, ζ = 0, next term 1/ξ².
    const found = fieldOfSlit(1, 0, [60]);
    expectClose(found.re[0]!, (Math.exp(-1) * Math.sin(120)) / (Math.sqrt(Math.PI) * 60), {
      absolute: (Math.exp(-1) * 2) / (Math.sqrt(Math.PI) * 60 * 60),
      source: 'integration by parts',
    });
    expect(fieldOfSlit(2, 1e4, [-400, 400]).re.every(Number.isFinite)).toBe(true);
  });

  test('dark centre and flattest half-widths', () => {
    const { checks } = square;
    expectClose(halfWidthOfDarkCentre('crossed', null), checks.nullCrossed, { relative: 1e-13, source });
    expectClose(halfWidthOfDarkCentre('island', null), checks.nullIsland, { relative: 1e-13, source });
    expectClose(halfWidthOfFlattest('crossed', null), checks.flattestCrossed, { relative: 1e-13, source });
    expectClose(halfWidthOfFlattest('island', null), checks.flattestIsland, { relative: 1e-13, source });
    expect(() => halfWidthOfFlattest('island', 0)).toThrow(/above 0/);
  });

  test.each(['crossed', 'island'] as const)('%s behind a stop: dark centre dark, flattest flat', (kind) => {
    const build = (halfWidth: number): SeparablePlate => ({
      kind,
      halfWidthX: halfWidth,
      halfWidthY: halfWidth,
      phase: Math.PI,
      stopX: 1.5,
      stopY: 1.5,
    });
    const dark = irradianceOfCrossedStep(build(halfWidthOfDarkCentre(kind, 1.5)), 0, [0], [0]);
    expectClose(dark[0]!, 0, { absolute: 1e-25, source: 'condition of the dark centre' });
    const flat = irradianceOfCrossedStep(build(halfWidthOfFlattest(kind, 1.5)), 0, [0, 1e-2], [0]);
    // The next term is ξ⁴ with a coefficient of order 1.
    expectClose(flat[1]!, flat[0]!, { absolute: 2e-8, source: 'condition of zero curvature' });
  });

  test('energy: the map integrates to (π/2) of what passes the stop', () => {
    const plate: SeparablePlate = {
      kind: 'crossed',
      halfWidthX: 1,
      halfWidthY: 0.8,
      phase: Math.PI,
      stopX: 1.5,
      stopY: null,
    };
    const step = 0.4;
    const axis = Float64Array.from({ length: 1501 }, (_, i) => (i - 750) * step);
    const sum = irradianceOfCrossedStep(plate, 0.4, axis, axis).reduce((total, value) => total + value, 0);
    // |U|² is band-limited, so the sum is exact but for the ξ⁻² tail beyond 300: below 2e-3.
    expectClose(sum * step * step, (Math.PI / 2) * energyThroughRectangle(plate), {
      relative: 2e-3,
      source: 'Parseval',
    });
  });
});
