import { describe, expect, it } from 'vitest';
import type { NamedFocusCaustic } from '../../lib/measured/causticTable.ts';
import type { Light } from '../../lib/optics/light.ts';
import { spotRadiiAt, spotRadiusAt } from '../../lib/optics/spotRadius.ts';
import { withPhaseScaled } from '../../lib/optics/variants.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, read, type Values } from '../notebooks/designOutcomes.ts';

const valueIn = (id: string, design: Values = {}) => (outcomesOf(design)(id) as { value: unknown }).value;

/** A beam without plate and stop: Gaussian in every plane, w0 = λf/(πw), zR = πw0²/λ. */
const open = { 'plate.stop': 'open' };
const gaussian = withPhaseScaled(valueIn('focus.light', open) as Light, 0);
const w0 = valueIn('focus.radius', open) as number;
const rayleigh = valueIn('focus.rayleighLength', open) as number;

describe('the radius of a Gaussian in each of its meanings', () => {
  it.each([0, 0.7, -2])('at ζ = %f', (zeta) => {
    const w = w0 * Math.hypot(1, zeta);
    const near = { relative: 1e-6, source: 'w0 √(1 + ζ²)' };
    expectClose(spotRadiusAt(gaussian, zeta * rayleigh, 'moment'), w, near);
    expectClose(spotRadiusAt(gaussian, zeta * rayleigh, 'gaussian'), w, near);
    expectClose(spotRadiusAt(gaussian, zeta * rayleigh, 'half'), w * Math.sqrt(Math.LN2 / 2), near);
  });
});

it('several planes at once give what each gives on its own', () => {
  const real = valueIn('focus.light', {
    'laser.beamPropagationRatio': 1.2,
    'lens.plateDistance': 0.03,
  }) as Light;
  const planes = Float64Array.of(3e-4, -1e-4, 0, -4e-4);
  for (const meaning of ['moment', 'gaussian', 'half'] as const) {
    spotRadiiAt(real, planes, meaning).forEach((radius, i) => {
      expectClose(radius, spotRadiusAt(real, planes[i]!, meaning), {
        relative: 1e-9,
        source: 'its own kernel',
      });
    });
  }
});

const light = valueIn('focus.light') as Light;
const places = [2e-4, -1e-4, 0, 1e-4];

/** The prediction itself as a measured table, `factor` times as wide, its z shifted by −`offset`. */
function table(meaning: 'moment' | 'gaussian' | 'half', factor = 1, offset = 0): NamedFocusCaustic {
  const diameter = places.map((z) => 2 * factor * spotRadiusAt(light, z, meaning));
  return { name: 'focus.csv', z: places.map((z) => z - offset), diameter, diameterY: [] };
}

describe('the prediction given as a measured caustic', () => {
  it.each(['moment', 'gaussian', 'half'] as const)('agrees with itself: %s', (meaning) => {
    const design = {
      'focus.measuredCaustic': table(meaning, 1, 0.012),
      'focus.measuredCausticMeaning': meaning,
      'focus.measuredCausticOffset': 0.012,
    };
    // The offset costs the z of a place some 1e-18 m.
    expectClose(read(design)('focus.measuredCausticExcess'), 0, { absolute: 1e-9 });
    expectClose(read(design)('focus.measuredCausticDeviation'), 0, { absolute: 1e-9 });
  });

  it('7 % wider is said so', () => {
    const value = read({ 'focus.measuredCaustic': table('moment', 1.07) });
    expectClose(value('focus.measuredCausticExcess'), 0.07, { relative: 1e-9 });
    expectClose(value('focus.measuredCausticDeviation'), 0.07, { relative: 1e-9 });
  });

  it('of two axes compares the geometric mean', () => {
    const { diameter, ...rest } = table('moment');
    const both = { ...rest, diameter: diameter.map((d) => 1.1 * d), diameterY: diameter.map((d) => d / 1.1) };
    const design = { 'focus.measuredCaustic': both };
    expectClose(read(design)('focus.measuredCausticExcess'), 0, { absolute: 1e-9 });
    const points = valueIn('focus.measuredCausticPoints', design) as Record<string, Float64Array>;
    expect([...points['z']!]).toEqual([...places].sort((a, b) => a - b));
    points['radiusX']!.forEach((r, i) => {
      expectClose(r / points['radiusY']![i]!, 1.21, { relative: 1e-12 });
    });
  });

  it('leaves out what lies too far away, and compares 25 places at most', () => {
    const far = table('moment');
    const more: NamedFocusCaustic = { ...far, z: [...far.z, 0.05], diameter: [...far.diameter, 1e-3] };
    const one = valueIn('focus.measuredCausticPrediction', { 'focus.measuredCaustic': more });
    expect((one as { z: Float64Array }).z).toHaveLength(4);
    const z = Array.from({ length: 80 }, (_, i) => (i - 40) * 1e-5);
    const many = valueIn('focus.measuredCausticPrediction', {
      'focus.measuredCaustic': { name: 'many.csv', z, diameter: z.map(() => 2e-5), diameterY: [] },
    }) as { z: Float64Array };
    expect([many.z.length, many.z[0], many.z.at(-1)]).toEqual([25, z[0], z.at(-1)]);
  });

  it('says where none lies near the focus', () => {
    const outcome = outcomesOf({ 'focus.measuredCaustic': table('moment', 1, 0.5) })(
      'focus.measuredCausticExcess',
    );
    const { message, parts } = (outcome as { problem: { message: string; parts: object } }).problem;
    expect(message).toMatch(/^No place of the measured caustic lies within 12 Rayleigh lengths of the focus/);
    expect(parts).toMatchObject({ input: 'focus.measuredCausticOffset' });
  });
});
