import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { type CrossedPlate, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { tiltedSpot } from '../../lib/optics/tiltedSpot.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import type { MapGrid, PulsePlaces } from '../../lib/process/mapGrid.ts';
import { pulseMap } from '../../lib/process/pulseMap.ts';
import { expectClose } from '../close.ts';
import { lightBehind } from '../optics/lightBehind.ts';
import { farCrossedSpot, farRoundSpot } from './farSpots.ts';
import { crossedStep, roundStep, spotAtDefocus } from './spots.ts';

/** A field of side × side metres with `count` pulses a side, each off its place by a third of the spacing at most. */
function jitteredField(side: number, count: number): PulsePlaces {
  const random = createRandom(6301);
  const spacing = side / count;
  const place = () => Float64Array.from({ length: count * count }, () => random.between(-1, 1) / 3);
  const [x, y] = [place(), place()];
  return {
    x: x.map((part, i) => ((i % count) + part) * spacing),
    y: y.map((part, i) => (Math.floor(i / count) + part) * spacing),
  };
}

/** The largest deviation from direct summation at seeded points of the grid, over the mean of the field. */
function worstOf(
  spot: Spot,
  irradianceAt: Spot['irradianceAt'],
  side: number,
  pulses: PulsePlaces,
  grid: MapGrid,
): number {
  const map = pulseMap(spot, pulses, grid);
  expect(map.length).toBe(grid.columns * grid.rows);
  const mean = (spot.effectiveArea * spot.peak * pulses.x.length) / side ** 2;
  const random = createRandom(6302);
  let worst = 0;
  for (let n = 0; n < 40; n++) {
    const column = Math.floor(random.uniform() * grid.columns);
    const row = Math.floor(random.uniform() * grid.rows);
    const [x, y] = [grid.left + column * grid.step, grid.bottom + row * grid.step];
    let sum = 0;
    for (let i = 0; i < pulses.x.length; i++) sum += irradianceAt(x - pulses.x[i]!, y - pulses.y[i]!);
    worst = Math.max(worst, Math.abs(map[row * grid.columns + column]! - sum) / mean);
  }
  return worst;
}

const side = 0.3e-3;
const pulses = jitteredField(side, 60);
const whole: MapGrid = { left: -20e-6, bottom: -20e-6, step: 1e-6, columns: 341, rows: 341 };
const source = 'direct summation';

describe('map of accumulated fluence', () => {
  it.each([
    ['without a stop', Number.POSITIVE_INFINITY, 1],
    ['with a stop', 1.4, 1],
    ['with a stop and M² = 1.3', 1.6, 1.3],
  ])('round step %s', (_, stop, beamPropagationRatio) => {
    const zones = [
      { outer: 1, phase: 2.9 },
      { outer: stop, phase: 0 },
    ];
    const light = lightBehind(zones, { beamPropagationRatio });
    const z = planeOfDefocus(light, 0.4);
    const far = farRoundSpot(light, z, 80);
    expectClose(worstOf(spotAt(light, z), far.irradianceAt, side, pulses, whole), 0, {
      absolute: 1e-4,
      source,
    });
  });

  it.each([0, 1.5])('crossed steps behind a stop of %s', (stop) => {
    const light = crossedStep(1.09, stop);
    const far = farCrossedSpot(light, light.plate as CrossedPlate, 0, 80);
    expectClose(worstOf(spotAtDefocus(light, 0), far.irradianceAt, side, pulses, whole), 0, {
      absolute: 1e-4,
      source,
    });
  });

  it('a Gaussian, straight and on a tilted surface', () => {
    const gaussian = gaussianSpot(8e-6);
    for (const spot of [gaussian, tiltedSpot(gaussian, 0.8, 0.5)])
      expectClose(worstOf(spot, spot.irradianceAt, side, pulses, whole), 0, { absolute: 1e-5, source });
  });

  it('an off-centre beam', { timeout: 60_000 }, () => {
    const zones = [
      { outer: 1, phase: Math.PI },
      { outer: 1.5, phase: 0 },
    ];
    const light = lightBehind(zones, { decentreX: 0.8e-3, beamAspect: 1.15 });
    const spot = spotAt(light, planeOfDefocus(light, 0.4));
    // The spot is asked within its reach of some 10 focus radii only: one pulse, near its middle.
    const one = { x: Float64Array.of(1.7e-6), y: Float64Array.of(-2.2e-6) };
    const map = pulseMap(spot, one, { left: -20e-6, bottom: -20e-6, step: 2e-6, columns: 21, rows: 21 });
    map.forEach((value, i) => {
      const [x, y] = [((i % 21) - 10) * 2e-6 - 1.7e-6, (Math.floor(i / 21) - 10) * 2e-6 + 2.2e-6];
      expectClose(value, spot.irradianceAt(x, y), { absolute: 1e-4 * spot.peak, source: 'the spot itself' });
    });
  });

  it('a grid coarser than the spot, and one that covers a corner only', () => {
    const light = roundStep(1, 1.4);
    const far = farRoundSpot(light, 0, 80);
    const spot = spotAtDefocus(light, 0);
    for (const grid of [
      { left: 0, bottom: 10e-6, step: 30e-6, columns: 10, rows: 7 },
      { left: 0.25e-3, bottom: -30e-6, step: 0.4e-6, columns: 100, rows: 33 },
      { left: 0.1e-3, bottom: 0.1e-3, step: 5e-6, columns: 1, rows: 1 },
    ])
      expectClose(worstOf(spot, far.irradianceAt, side, pulses, grid), 0, { absolute: 1e-4, source });
  });

  it('no pulses leave nothing, and the work is reported', () => {
    const none = { x: new Float64Array(0), y: new Float64Array(0) };
    expect(pulseMap(gaussianSpot(1), none, whole).every((value) => value === 0)).toBe(true);
    const parts: number[] = [];
    pulseMap(gaussianSpot(8e-6), pulses, whole, (part) => parts.push(part));
    expect(parts.at(-1)).toBe(1);
    expect([...parts].sort((a, b) => a - b)).toEqual(parts);
  });

  it('a field too wide for the spot is refused', () => {
    const far = { x: Float64Array.of(0, 1), y: Float64Array.of(0, 1) };
    expect(() => pulseMap(gaussianSpot(1e-5), far, whole)).toThrow(/too wide for a map/);
  });
});
