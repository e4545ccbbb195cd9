import { describe, expect, it } from 'vitest';
import { createRandom, type Random } from '../../lib/numerics/random.ts';
import { type CrossedPlate, focusRadius, type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { radiusScale, roundIrradianceAt } from '../../lib/optics/roundSpot.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { doseBySum, type FarSpot } from '../../lib/process/doseBySum.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { doseOnGrid, gridDose } from '../../lib/process/gridDose.ts';
import { doseAcross, lineDose } from '../../lib/process/lineDose.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from '../optics/lightBehind.ts';
import { reference } from '../reference.ts';
import { farCrossedSpot, farRoundSpot } from './farSpots.ts';
import { crossedStep, roundStep, spotAtDefocus } from './spots.ts';

describe('dose of lines and grids', () => {
  const source = 'dose.json';
  for (const { name, zones, zeta, lines, grid } of reference('dose').cases) {
    const light = lightBehind(zones.map(([outer, phase]: [number, number]) => ({ outer, phase })));
    const z = planeOfDefocus(light, zeta);
    const scale = radiusScale(light, z);
    const spot = spotAt(light, z);
    it.each(lines as Record<string, number>[])(`${name}: lines $pitch w0 apart`, (line) => {
      const close = { absolute: 1e-8, source };
      const dose = lineDose(spot, line['pitch']! * scale, 0.4);
      for (const key of ['modulation', 'rms', 'max', 'min'] as const)
        expectClose(dose[key], line[key]!, close);
      expectClose(doseAcross(dose, 0), line['doseOnLine']!, close);
      expectClose(doseAcross(dose, dose.pitch / 2), line['doseBetween']!, close);
    });
    it(`${name}: a grid`, () => {
      const dose = gridDose(spot, { along: grid.px * scale, across: grid.py * scale, direction: 0 });
      for (const { x, y, dose: expected } of grid.values)
        expectClose(doseOnGrid(dose, x * scale, y * scale), expected, { absolute: 1e-8, source });
    });
  }

  it('a staircase of lines of no modulation behind a stop, and none without', () => {
    const end = 4 * 1.4;
    const width = focusRadius(roundStep(1));
    const stopped = spotAtDefocus(roundStep(1, 1.4), 0);
    expect(lineDose(stopped, ((2 * Math.PI) / end) * width * 0.999).modulation).toBe(0);
    expect(lineDose(stopped, ((2 * Math.PI) / end) * width * 1.05).modulation).toBeGreaterThan(0);
    expect(
      lineDose(spotAtDefocus(roundStep(1), 0), ((2 * Math.PI) / end) * width).modulation,
    ).toBeGreaterThan(1e-6);
  });

  it('crossed steps scanned on the diagonal are another spot than along an axis', () => {
    const spot = spotAtDefocus(crossedStep(1.09, 1.5), 0);
    const pitch = 1.6 * focusRadius(crossedStep(1));
    const [along, diagonal] = [lineDose(spot, pitch, 0), lineDose(spot, pitch, Math.PI / 4)];
    expectClose(along.modulation, lineDose(spot, pitch, Math.PI / 2).modulation, { absolute: 1e-12 });
    expect(Math.abs(along.modulation - diagonal.modulation)).toBeGreaterThan(0.01);
  });

  it('a spacing of zero is refused with the input named', () => {
    expect(() => lineDose(gaussianSpot(1), 0)).toThrow(/line spacing is 0 m; it must be above 0/);
    expect(() => gridDose(gaussianSpot(1), { along: Number.NaN, across: 1, direction: 0 })).toThrow(
      /pulse spacing/,
    );
  });
});

/** A random design: round or crossed, with or without stop, M² above 1 for some. */
function drawDesign(random: Random, i: number): { light: Light; z: number; direction: number } {
  const crossed = i % 2 === 1;
  const beamPropagationRatio = i % 8 === 2 || i % 8 === 5 ? random.between(1.02, 1.6) : 1;
  const [ratio, phase] = [random.between(0.6, 1.4), random.between(0.5, Math.PI)];
  const stop = i % 3 === 0 ? Number.POSITIVE_INFINITY : ratio * random.between(1.1, 2);
  const zones = [
    { outer: ratio, phase },
    { outer: stop, phase: 0 },
  ];
  const round = lightBehind(zones, { beamPropagationRatio });
  const half = ratio * round.beamRadius;
  const plate: CrossedPlate = {
    kind: 'crossed',
    halfWidthX: half,
    halfWidthY: half * random.between(0.8, 1.1),
    phase,
    stop: Number.isFinite(stop) ? stop * round.beamRadius : 0,
  };
  const light = crossed ? { ...round, plate } : round;
  const direction = i % 4 === 1 ? 0 : i % 4 === 3 ? Math.PI / 4 : random.between(0, Math.PI);
  return { light, z: planeOfDefocus(light, random.between(-2, 2)), direction };
}

/** Reach of the sum in w0·B/f: straight edges have longer tails; with a blur they take long to tabulate. */
function reachOf({ plate, beamPropagationRatio }: Light): number {
  if (plate.kind === 'round') return 200;
  return beamPropagationRatio === 1 ? 2000 : 600;
}

function farSpot(light: Light, z: number): FarSpot {
  const { plate } = light;
  const reach = reachOf(light);
  return plate.kind === 'crossed' ? farCrossedSpot(light, plate, z, reach) : farRoundSpot(light, z, reach);
}

describe('accumulated fluence by the spectrum and by adding up pulses', () => {
  const count = cases(200, 6);
  it(`agree for ${count} random designs with hard edges to 1e-4`, { timeout: 600_000 }, () => {
    const random = createRandom(6201);
    for (let i = 0; i < count; i++) {
      const { light, z, direction } = drawDesign(random, i);
      const spot = spotAt(light, z);
      const far = farSpot(light, z);
      const scale = radiusScale(light, z);
      const across = random.between(0.5, 2.5) * scale;
      const [u, v] = [random.uniform() * scale, random.uniform() * across];
      const closeness = { absolute: 1e-4, source: `design ${i}, summed` };
      const grid = { along: random.between(0.5, 1.5) * scale, across, direction };
      const reach = reachOf(light) * scale;
      expectClose(doseOnGrid(gridDose(spot, grid), u, v), doseBySum(far, grid, u, v, reach), closeness);
      // So close along the line that no frequency of the pulses is in the spot.
      const ends = [0, 0.25, 0.5, 0.75].map((turn) => spot.spectrumEnd(turn * Math.PI));
      const dense = { along: (2 * Math.PI) / (1.01 * Math.max(...ends)), across, direction };
      expectClose(
        doseAcross(lineDose(spot, across, direction), v),
        doseBySum(far, dense, u, v, reach),
        closeness,
      );
    }
  });

  it(`agree for ${count} Gaussians to 1e-6`, () => {
    const random = createRandom(6202);
    for (let i = 0; i < count; i++) {
      const beamPropagationRatio = i % 2 === 0 ? 1 : random.between(1, 2);
      const light = lightBehind([{ outer: Number.POSITIVE_INFINITY, phase: 0 }], { beamPropagationRatio });
      const defocus = random.between(-2, 2);
      const z = planeOfDefocus(light, defocus);
      const scale = radiusScale(light, z);
      const radius = Math.sqrt(beamPropagationRatio ** 2 + defocus ** 2) * scale;
      const direction = random.between(0, Math.PI);
      const grid = {
        along: random.between(0.5, 1.5) * scale,
        across: random.between(0.5, 2.5) * scale,
        direction,
      };
      const [u, v] = [random.uniform() * scale, random.uniform() * scale];
      const at = (x: number, y: number) => roundIrradianceAt(light, z, Float64Array.of(Math.hypot(x, y)))[0]!;
      const far: FarSpot = {
        irradianceAt: (x, y) => (Math.hypot(x, y) < 3.5 * radius ? at(x, y) : 0),
        energy: (Math.PI * focusRadius(light) ** 2) / 2,
        tail: { outside: () => 0 },
      };
      const summed = doseBySum(far, grid, u, v, 7 * radius);
      const closeness = { absolute: 1e-6, source: 'summed' };
      expectClose(doseOnGrid(gridDose(spotAt(light, z), grid), u, v), summed, closeness);
      expectClose(doseOnGrid(gridDose(gaussianSpot(radius), grid), u, v), summed, closeness);
    }
  });
});
