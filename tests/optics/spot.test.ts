import { describe, expect, test } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { focusRadius, type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { radiusScale } from '../../lib/optics/roundSpot.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { Zone } from '../../lib/optics/zones.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';
import { lightBehind } from './lightBehind.ts';

/** A light whose plate does nothing; the plate stands off the front focal plane, so that B ≠ f out of focus. */
const bare: Light = lightBehind(
  [
    { outer: 1, phase: 0 },
    { outer: Number.POSITIVE_INFINITY, phase: 0 },
  ],
  { plateDistance: 0.15 },
);
const { beamRadius } = bare;

function round(zones: readonly Zone[]): Light['plate'] {
  return { kind: 'round', zones: zones.map(({ outer, phase }) => ({ outer: outer * beamRadius, phase })) };
}

function straight(kind: 'crossed' | 'island', x: number, y: number, phase: number, stop = 0): Light['plate'] {
  const [halfWidthX, halfWidthY] = [x * beamRadius, y * beamRadius];
  return { kind, halfWidthX, halfWidthY, phase, stop: stop * beamRadius };
}

const unphased = {
  round: bare.plate,
  crossed: straight('crossed', 1, 0.8, 0),
  island: straight('island', 1, 0.8, 0),
};
const stepped = {
  round: round([
    { outer: 1, phase: Math.PI },
    { outer: 1.5, phase: 0 },
  ]),
  crossed: straight('crossed', 1.0876520317581673, 1.0876520317581673, Math.PI, 1.5),
  island: straight('island', 0.9, 1.1, 2.6, 1.6),
};

describe('an open plate without phase is a Gaussian', () => {
  test.each(Object.entries(unphased))('%s', (kind, plate) => {
    for (const ratio of [1, 1.3]) {
      const light = { ...bare, plate, beamPropagationRatio: ratio };
      // Width in the focus: w0·M² (Gaussian Schell-model beam); peak 1/M⁴.
      const width = focusRadius(light) * ratio;
      const spot = spotAt(light, 0);
      expectClose(spot.peak, ratio ** -2, { relative: 1e-8, source: 'closed form' });
      expectClose(spot.effectiveArea, (Math.PI * width ** 2) / 2, { relative: 1e-8, source: 'closed form' });
      expect(spot.transmission).toBe(1);
      const half = ((Math.PI * width ** 2) / 2) * Math.LN2;
      const worst = Math.max(
        ...[0.02, 0.1, 0.3, 0.5, 0.7, 0.9].map((clip) => {
          const area = ((Math.PI * width ** 2) / 2) * Math.log(1 / clip);
          const found = spot.areaAbove(clip * spot.peak);
          const allowed = kind === 'round' ? { relative: 1e-8 } : { absolute: 1e-4 * Math.max(area, half) };
          expectClose(found, area, { ...allowed, source: 'closed form' });
          return Math.abs(found - area) / Math.max(area, half);
        }),
      );
      console.log(`${kind}, M² ${ratio}: worst area ${worst.toExponential(1)}`);
      for (const [x, y] of [
        [0, 0],
        [0.4, -0.3],
        [-1.1, 0.6],
      ] as const) {
        const expected = ratio ** -2 * Math.exp(-2 * (x * x + y * y));
        expectClose(spot.irradianceAt(x * width, y * width), expected, {
          absolute: 1e-8,
          source: 'closed form',
        });
      }
    }
  });

  test('elliptical, on round zones and on crossed strips', () => {
    for (const plate of [unphased.round, unphased.crossed]) {
      const light = { ...bare, plate, beamAspect: 1.2 };
      const [x, y] = [focusRadius(light) * Math.sqrt(1.2), focusRadius(light) / Math.sqrt(1.2)];
      const spot = spotAt(light, 0);
      expectClose(spot.peak, 1, { relative: 1e-8, source: 'closed form' });
      expectClose(spot.irradianceAt(0.7 * x, -0.4 * y), Math.exp(-2 * (0.49 + 0.16)), { absolute: 1e-8 });
      expectClose(spot.areaAbove(0.3), ((Math.PI * x * y) / 2) * Math.log(1 / 0.3), { relative: 1e-4 });
    }
  });

  test('a decentred beam keeps its place in the focus, whatever its wavefront', () => {
    for (const wavefrontCurvature of [0, 0.02]) {
      const light = { ...bare, decentreX: 1e-3, decentreY: -0.5e-3, wavefrontCurvature };
      // A ray along the axis through the beam's centre meets the axis in the focal plane.
      const spot = spotAt(light, 0);
      expectClose(spot.irradianceAt(0, 0), spot.peak, { relative: 1e-8, source: 'geometry' });
    }
  });
});

/** ∫ of the irradiance over |x|, |y| < half, by the midpoint rule of 241² points. */
function energyWithin(spot: Spot, half: number): number {
  const count = 241;
  const step = (2 * half) / count;
  let sum = 0;
  for (let i = 0; i < count * count; i++)
    sum += spot.irradianceAt(((i % count) + 0.5) * step - half, (Math.floor(i / count) + 0.5) * step - half);
  return sum * step * step;
}

describe.each(Object.entries(stepped))('every question to a stepped %s spot', (kind, plate) => {
  const light = { ...bare, plate };

  test.each([0, 0.5, -1])('areas and energies agree, ζ = %f', (defocus) => {
    const z = planeOfDefocus(light, defocus);
    const spot = spotAt(light, z);
    const half = 4.5 * radiusScale(light, z);
    const total = (spot.transmission * Math.PI * focusRadius(light) ** 2) / 2;
    const share = energyWithin(spot, half) / total;
    console.log(
      `${kind}, ζ ${defocus}: ${share.toFixed(4)} of the energy within 4.5, peak ${spot.peak.toFixed(5)}`,
    );
    // Hard edges leave a few per cent outside: their tails fall as 1/ϱ (farTail).
    expect(share).toBeGreaterThan(0.9);
    expect(share).toBeLessThan(1);
    expectClose(spot.effectiveArea * spot.peak, total, { relative: 1e-12, source: 'Parseval' });
    // Counted cell by cell: the count over 601² points scatters by 1e-3 of the area.
    const level = 0.5 * spot.peak;
    expectClose(spot.areaAbove(level), countAbove(spot, level, half / 1.5), { relative: 2e-3 });
    expect(spot.areaAbove(spot.peak * 1.001)).toBe(0);
  });

  test('the peak is the highest of seeded points, and M² lowers it', () => {
    const random = createRandom(8111);
    const spot = spotAt(light, 0);
    const width = focusRadius(light);
    for (let i = 0; i < 2000; i++) {
      const [x, y] = [random.between(-3, 3) * width, random.between(-3, 3) * width];
      expect(spot.irradianceAt(x, y)).toBeLessThanOrEqual(spot.peak * (1 + 1e-8));
    }
    const blurred = spotAt({ ...light, beamPropagationRatio: 1.2 }, 0);
    expect(blurred.peak).toBeLessThan(spot.peak);
    expectClose(blurred.irradianceAt(0, 0), blurredAt(spot, 1.2, width), {
      relative: 2e-7,
      source: 'direct sum',
    });
  });
});

function countAbove(spot: Spot, level: number, half: number): number {
  const count = 601;
  const step = (2 * half) / count;
  let found = 0;
  for (let i = 0; i < count * count; i++) {
    const x = ((i % count) + 0.5) * step - half;
    if (spot.irradianceAt(x, (Math.floor(i / count) + 0.5) * step - half) > level) found++;
  }
  return found * step * step;
}

/** The axis of a spot convolved with the Gaussian of 1/e² radius w0·√(M⁴−1), by the trapezoidal rule. */
function blurredAt(spot: Spot, ratio: number, width: number): number {
  const blur = width * Math.sqrt(ratio ** 2 - 1);
  const step = blur / 20;
  let sum = 0;
  for (let i = -70; i <= 70; i++)
    for (let j = -70; j <= 70; j++)
      sum += spot.irradianceAt(i * step, j * step) * Math.exp((-2 * (i * i + j * j)) / 400);
  return (sum * 2 * step * step) / (Math.PI * blur * blur);
}

describe('reference points in metres', () => {
  for (const entry of reference('square').cases) {
    test(`square.json, ${entry.name}`, () => {
      const plate = straight(entry.kind, entry.halfWidthX, entry.halfWidthY, entry.phase, entry.stop ?? 0);
      comparePlanes({ ...bare, plate }, entry.planes, 1);
    });
  }

  for (const entry of reference('offaxis').cases) {
    const { x0 = 0, y0 = 0, ax = 1, ay = 1, alpha = 0, qx = 0, qy = 0 } = entry.beam;
    // Tilt and astigmatism are no part of a light.
    if (alpha !== 0 || qx !== 0 || qy !== 0) continue;
    test(`offaxis.json, ${entry.name}`, () => {
      // The reference's w is the plate's unit; a light's is √(wx·wy).
      const mean = Math.sqrt(ax * ay);
      const plate = round(entry.zones.map(([outer, phase]: [number, number]) => ({ outer, phase })));
      const light: Light = {
        ...bare,
        plate,
        beamRadius: beamRadius * mean,
        decentreX: x0 * beamRadius,
        decentreY: y0 * beamRadius,
        beamAspect: ay / ax,
      };
      const transmission = comparePlanes(light, entry.planes, mean);
      expectClose(transmission, entry.energy, { relative: 1e-12, source: 'offaxis.json' });
    });
  }
});

interface ReferencePlane {
  readonly zeta: number;
  readonly field: readonly { readonly xi: number; readonly eta: number; readonly irradiance: number }[];
}

/**
 * Compares all points; `mean` is the light's w in the reference's. In the reference's unit the focus is w0 = λf/(πw)
 * and ζ = πw²z/(λfB), so ζ of the light is mean²·ζ, and |U|² relative to its own unshaped focus is 1/(ax·ay)² of it.
 */
function comparePlanes(light: Light, planes: readonly ReferencePlane[], mean: number): number {
  let transmission = 0;
  for (const { zeta, field } of planes) {
    const z = planeOfDefocus(light, zeta * mean * mean);
    const spot = spotAt(light, z);
    const unit = radiusScale(light, z) * mean;
    const strength = (focusRadius(light) / radiusScale(light, z)) ** 2 / mean ** 4;
    for (const { xi, eta, irradiance } of field) {
      expectClose(spot.irradianceAt(xi * unit, eta * unit), strength * irradiance, { absolute: 1e-8 });
    }
    transmission = spot.transmission;
  }
  return transmission;
}

describe('what is not covered is said', () => {
  test.each([
    [{ decentreX: 1e-3, beamPropagationRatio: 1.2 }, /M² = 1 only/],
    [{ decentreX: 1e-3, plate: unphased.crossed }, /centre of the plate/],
  ])('%j', (change, message) => {
    expect(() => spotAt({ ...bare, ...change }, 0)).toThrow(message);
  });

  test.each(Object.values(stepped))('too far from the focus', (plate) => {
    expect(() => spotAt({ ...bare, plate }, planeOfDefocus({ ...bare, plate }, 13))).toThrow(
      /Rayleigh lengths/,
    );
  });
});
