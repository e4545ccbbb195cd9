import { describe, expect, test } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import {
  beamCurvature,
  beamFromWaist,
  beamRadius,
  chainMatrices,
  freeSpace,
  propagateBeam,
  type RayMatrix,
  thinLens,
  waistRadius,
} from '../../lib/optics/abcd.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';

const wavelength = 1.03e-6;

/** Second moments ⟨r²⟩, ⟨rθ⟩, ⟨θ²⟩ of the real beam carried through a ray matrix: no complex parameter in it. */
function carryMoments([rr, rt, tt]: number[], { a, b, c, d }: RayMatrix): number[] {
  return [
    a * a * rr! + 2 * a * b * rt! + b * b * tt!,
    a * c * rr! + (a * d + b * c) * rt! + b * d * tt!,
    c * c * rr! + 2 * c * d * rt! + d * d * tt!,
  ];
}

describe('free space and lens', () => {
  test('w² = w0²(1 + z²/zR²), R = z + zR²/z', () => {
    const ratio = 1.2;
    const rayleighLength = (Math.PI * 1e-3 ** 2) / (ratio * wavelength);
    for (const z of [-3, -0.2, 0.5, 10]) {
      const beam = propagateBeam(beamFromWaist(1e-3, 0, ratio, wavelength), freeSpace(z));
      const radius = 1e-3 * Math.sqrt(1 + (z / rayleighLength) ** 2);
      expectClose(beamRadius(beam, ratio, wavelength), radius, { relative: 1e-14, source: 'closed form' });
      const curvature = 1 / (z + rayleighLength ** 2 / z);
      expectClose(beamCurvature(beam), curvature, { relative: 1e-14, source: 'closed form' });
    }
  });

  test('a lens at the waist focuses to λM²f/(πw), moved by the finite Rayleigh length', () => {
    const [f, ratio, w] = [0.1, 1.3, 5e-3];
    const beam = propagateBeam(beamFromWaist(w, 0, ratio, wavelength), thinLens(f));
    const u = (f * ratio * wavelength) / (Math.PI * w * w);
    const focus = (ratio * wavelength * f) / (Math.PI * w) / Math.sqrt(1 + u * u);
    expectClose(waistRadius(beam, ratio, wavelength), focus, { relative: 1e-13, source: 'closed form' });
    expectClose(-beam.re, f / (1 + u * u), { relative: 1e-13, source: 'closed form' });
  });

  test('two matrices 4f apart make the image −1', () => {
    const image = chainMatrices(freeSpace(0.2), thinLens(0.1), freeSpace(0.2));
    expectClose(image.a, -1, { absolute: 1e-15, source: 'imaging at 2f' });
    expectClose(image.b, 0, { absolute: 1e-16, source: 'imaging at 2f' });
  });
});

describe('any chain of lenses', () => {
  const seed = 1;
  test(`agrees with transported second moments, seed ${seed}`, () => {
    const random = createRandom(seed);
    for (let i = 0; i < cases(2000, 200); i++) {
      const ratio = random.between(1, 3);
      const w = random.between(0.2e-3, 6e-3);
      const chain = chainMatrices(
        freeSpace(random.between(-2, 2)),
        thinLens(random.between(0.05, 0.5) * (random.uniform() < 0.5 ? -1 : 1)),
        freeSpace(random.between(0.01, 1)),
        thinLens(random.between(0.05, 0.5)),
        freeSpace(random.between(0, 1)),
      );
      expectClose(chain.a * chain.d - chain.b * chain.c, 1, {
        absolute: 1e-11,
        source: 'determinant, 4e-12 of rounding',
      });
      const beam = propagateBeam(beamFromWaist(w, 0, ratio, wavelength), chain);
      // 1/e² radius is twice the deviation: ⟨r²⟩ = w²/4, ⟨θ²⟩ = (M²λ/(2πw))².
      const start = [w ** 2 / 4, 0, ((ratio * wavelength) / (2 * Math.PI * w)) ** 2];
      const [rr = 0, rt = 0, tt = 0] = carryMoments(start, chain);
      // Rounding only: 5e-15 measured, against the beam's own angle over radius for the curvature.
      const source = 'transported second moments';
      expectClose(beamRadius(beam, ratio, wavelength), 2 * Math.sqrt(rr), { relative: 1e-13, source });
      const scale = Math.sqrt(tt / rr);
      expectClose(beamCurvature(beam), rt / rr, { absolute: 1e-13 * scale, source });
    }
  });
});

test('what cannot be', () => {
  expect(() => thinLens(0)).toThrow(/focal length/);
  expect(() => beamFromWaist(0, 0, 1, wavelength)).toThrow(/waist radius/);
  expect(() => beamFromWaist(1e-3, 0, 0.9, wavelength)).toThrow(/at least 1/);
  expect(() => beamFromWaist(1e-3, 0, 1, Number.NaN)).toThrow(/wavelength/);
});
