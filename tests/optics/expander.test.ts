import { describe, expect, test } from 'vitest';
import { besselJ0 } from '../../lib/numerics/bessel.ts';
import { panelledRule } from '../../lib/numerics/gaussLegendre.ts';
import { expandBeam, type LensPair, requiredMagnification } from '../../lib/optics/expander.ts';
import { expectClose } from '../close.ts';

const raw = { waistDiameter: 5e-3, waistPosition: 0, beamPropagationRatio: 1, wavelength: 1.03e-6 };
const galilean: LensPair = {
  firstFocalLength: -50e-3,
  secondFocalLength: 100e-3,
  separation: 50e-3,
  distanceToFirst: 0.5,
  distanceToPlate: 0.2,
};
const keplerian: LensPair = { ...galilean, firstFocalLength: 50e-3, separation: 150e-3 };

/** Textbook steps with radius and curvature: to a lens, through it, to the next waist, and on. No ray matrix. */
function byTextbook(
  waist: number,
  ratio: number,
  lambda: number,
  distances: number[],
  focalLengths: number[],
) {
  let w0 = waist;
  let z = 0;
  const at = () => {
    const zR = (Math.PI * w0 * w0) / (ratio * lambda);
    return { w: w0 * Math.hypot(1, z / zR), curvature: z / (z * z + zR * zR) };
  };
  distances.forEach((distance, i) => {
    z += distance;
    const focalLength = focalLengths[i];
    if (focalLength === undefined) return;
    const { w, curvature } = at();
    const behind = curvature - 1 / focalLength;
    const s = (Math.PI * w * w) / (ratio * lambda);
    w0 = w / Math.hypot(1, s * behind);
    z = (s * s * behind) / (1 + (s * behind) ** 2);
  });
  return { ...at(), w0, z };
}

describe.each([
  ['Galilean', galilean],
  ['Keplerian', keplerian],
] as const)('%s expander 2 ×', (type, lenses) => {
  test('doubles the beam, leaves it nearly flat', () => {
    const out = expandBeam(raw, lenses);
    expect(out.type).toBe(type);
    expectClose(out.afocalError, 0, { absolute: 1e-16, source: 'f1 + f2 = separation' });
    // Both planes lie within 1 m of the waist, zR = 19 m: (1/19)²/2 = 1.4e-3.
    expectClose(out.diameter, 10e-3, { relative: 1.4e-3, source: 'm = |f2/f1|' });
    expect(Math.abs(out.wavefrontRadius)).toBeGreaterThan(100);
  });

  test.each([
    [1, 0, 0],
    [1.3, -0.4, 3e-3],
    [2, 2, -4e-3],
  ])(
    'M² = %f, waist at %f m, lenses %f m too far apart: as by textbook steps',
    (ratio, waistPosition, excess) => {
      const beam = { ...raw, beamPropagationRatio: ratio, waistPosition };
      const pair = { ...lenses, separation: lenses.separation + excess };
      const out = expandBeam(beam, pair);
      const expected = byTextbook(
        2.5e-3,
        ratio,
        raw.wavelength,
        [pair.distanceToFirst - waistPosition, pair.separation, pair.distanceToPlate],
        [pair.firstFocalLength, pair.secondFocalLength],
      );
      // Rounding only; a curvature off by 2e-15 moves the waist by zR² as much, zR up to 76 m.
      const source = 'textbook steps in w and R';
      expectClose(out.diameter, 2 * expected.w, { relative: 1e-14, source });
      expectClose(out.curvature, expected.curvature, { absolute: 1e-14, source });
      expectClose(out.waistDiameter, 2 * expected.w0, { relative: 3e-14, source });
      expectClose(out.waistPosition, -expected.z, { absolute: 6e-11, source });
      expectClose(out.afocalError, excess, { absolute: 1e-16 });
    },
  );
});

describe('focus inside', () => {
  test('only where the beam comes to a waist between the lenses', () => {
    expect(expandBeam(raw, galilean).internalFocusDiameter).toBeUndefined();
    expect(expandBeam(raw, galilean).internalFocusPosition).toBeUndefined();
    const { internalFocusDiameter, internalFocusPosition } = expandBeam(raw, keplerian);
    // (f/zR)² = 7e-6 and the lens 0.5 m behind the waist: (0.5/19)² · … below 1e-3.
    const focus = (2 * raw.wavelength * 50e-3) / (Math.PI * 2.5e-3);
    expectClose(internalFocusDiameter!, focus, { relative: 1e-3, source: '2λf/(πw)' });
    expectClose(internalFocusPosition!, 50e-3, { relative: 1e-3, source: 'focal length' });
  });

  test('its 1/e² diameter by a diffraction integral', () => {
    const lenses = { ...keplerian, distanceToFirst: 0 };
    const { internalFocusDiameter, internalFocusPosition } = expandBeam(raw, lenses);
    const [w, f, z] = [2.5e-3, lenses.firstFocalLength, internalFocusPosition!];
    const k = (2 * Math.PI) / raw.wavelength;
    const rule = panelledRule([0, w, 2 * w, 3 * w, 4 * w, 5 * w, 6 * w], 40);
    const irradiance = (rho: number) => {
      let re = 0;
      let im = 0;
      rule.nodes.forEach((r, i) => {
        const amplitude = rule.weights[i]! * r * Math.exp(-((r / w) ** 2)) * besselJ0((k * r * rho) / z);
        const phase = (k * r * r * (1 / z - 1 / f)) / 2;
        re += amplitude * Math.cos(phase);
        im += amplitude * Math.sin(phase);
      });
      return re * re + im * im;
    };
    const ratio = irradiance(internalFocusDiameter! / 2) / irradiance(0);
    expectClose(ratio, Math.exp(-2), { relative: 1e-10, source: 'Fresnel integral with Bessel functions' });
  });
});

test('diverging pairs, flat wavefronts and needed magnification', () => {
  expect(expandBeam(raw, { ...galilean, secondFocalLength: -0.1 }).type).toBe('diverging');
  const still = { ...galilean, firstFocalLength: 1e30, secondFocalLength: 1e30, distanceToPlate: 0 };
  const flat = expandBeam({ ...raw, waistPosition: 0.55 }, still);
  expect(Math.abs(flat.wavefrontRadius)).toBeGreaterThan(1e15);
  expectClose(flat.diameter, 5e-3, { relative: 1e-15, source: 'waist at the plate' });
  expectClose(requiredMagnification(5e-3, 1.29551, 2.5e-3), 2 / 1.29551, {
    relative: 1e-15,
    source: '(a/κ)/w',
  });
});

test('what cannot be', () => {
  expect(() => expandBeam(raw, { ...galilean, separation: 0 })).toThrow(/distance between the lenses/);
  expect(() => expandBeam(raw, { ...galilean, firstFocalLength: 0 })).toThrow(/focal length/);
  expect(() => expandBeam({ ...raw, beamPropagationRatio: 0.5 }, galilean)).toThrow(/at least 1/);
  expect(() => requiredMagnification(5e-3, 0, 2.5e-3)).toThrow(/step ratio/);
});
