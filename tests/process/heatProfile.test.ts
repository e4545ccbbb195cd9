import { describe, expect, it } from 'vitest';
import { panelledRule } from '../../lib/numerics/gaussLegendre.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { ownLineRise } from '../../lib/process/heatLine.ts';
import {
  heatSpectrum,
  hottestOfProfile,
  profileLineRise,
  profilePulseRise,
} from '../../lib/process/heatProfile.ts';
import { type HeatInput, pulseRise } from '../../lib/process/heatPulse.ts';
import { expectClose } from '../close.ts';
import { crossedStep, roundStep, spotAtDefocus } from './spots.ts';

const steel = { energy: 1e-6, diffusivity: 3.75e-6, heatCapacity: 4e6 };
const heatOf = (spot: Spot): HeatInput => ({
  ...steel,
  radius: Math.sqrt((2 * spot.effectiveArea) / Math.PI),
});

/** The rise by adding up the heat of each place of the profile, as Green's function carries it: six of its lengths around. */
function convolved(spot: Spot, heat: HeatInput, x: number, y: number, age: number): number {
  const length = Math.sqrt(4 * heat.diffusivity * age);
  const edges = Array.from({ length: 25 }, (_, i) => (6 * (i - 12)) / 12);
  const { nodes, weights } = panelledRule(edges, 4);
  let sum = 0;
  nodes.forEach((u, i) => {
    nodes.forEach((v, j) => {
      const weight = weights[i]! * weights[j]! * Math.exp(-u * u - v * v);
      sum += weight * spot.irradianceAt(x + u * length, y + v * length);
    });
  });
  const perUnit = (2 * heat.energy) / (heat.heatCapacity * Math.PI ** 1.5 * length);
  return (perUnit * sum) / (spot.peak * spot.effectiveArea);
}

describe('one pulse with its own profile, by spectrum and by Green’s function', () => {
  const spots: readonly [string, Spot, boolean][] = [
    ['round step without a stop', spotAtDefocus(roundStep(1), 0.44), true],
    ['ring behind a stop', spotAtDefocus(roundStep(1, 1.4), 0), true],
    ['crossed step behind a square stop', spotAtDefocus(crossedStep(1.0877, 1.5), 0), false],
    ['crossed step out of focus', spotAtDefocus(crossedStep(1, 1.4), 0.4), false],
  ];
  for (const [name, spot, round] of spots) {
    it(name, () => {
      const heat = heatOf(spot);
      for (const age of [2e-7, 2e-6]) {
        const spectrum = heatSpectrum(spot, heat.diffusivity, age, round);
        const middle = convolved(spot, heat, 0, 0, age);
        for (const [x, y] of [
          [0, 0],
          [0.6, 0.1],
          [0.5, 0.5],
          [-1.2, 0.4],
        ] as const) {
          const [u, v] = [x * heat.radius, y * heat.radius];
          const expected = convolved(spot, heat, u, v, age);
          // The sum over places holds 1e-8 (halving its panels moves it by 1e-13); kinks of the spectrum cost the other up to 1e-4, 3e-4 for crossed steps.
          expectClose(profilePulseRise(heat, spectrum, u, v, age), expected, {
            absolute: (round ? 1e-4 : 3e-4) * middle,
            source: 'Green’s function',
          });
        }
      }
    });
  }

  it('a Gaussian has its closed form, asked in all directions too', () => {
    const spot = gaussianSpot(9e-6);
    const heat = heatOf(spot);
    for (const round of [true, false]) {
      const spectrum = heatSpectrum(spot, heat.diffusivity, 1e-6, round);
      for (const age of [1e-6, 1e-5, 1e-4])
        for (const r of [0, 5e-6, 20e-6])
          expectClose(profilePulseRise(heat, spectrum, r, 0, age), pulseRise(heat, r * r, age), {
            absolute: 1e-9 * pulseRise(heat, 0, age),
            source: 'closed form',
          });
    }
  });
});

describe('a line with the spot’s own profile', () => {
  it('of a Gaussian is that of the Gaussian', () => {
    const spot = gaussianSpot(9e-6);
    const heat = heatOf(spot);
    const spectrum = heatSpectrum(spot, heat.diffusivity, 1e-6, true);
    for (const spacing of [0.5e-6, 5e-6, 30e-6]) {
      const line = { spacing, rate: 1e6, count: 5000 };
      expectClose(profileLineRise(heat, spectrum, line, 0, 0), ownLineRise(heat, spacing, 1e6, 5000), {
        relative: 3e-5,
        absolute: 1e-9 * pulseRise(heat, 0, 1e-6),
        source: 'closed form, least = 8',
      });
    }
  });

  it('a crossed step turned over is as hot on the other side, and hottest behind the spot', () => {
    const spot = spotAtDefocus(crossedStep(1.0877, 1.5), 0);
    const heat = heatOf(spot);
    const spectrum = heatSpectrum(spot, heat.diffusivity, 1e-6, false);
    const line = { spacing: 2e-6, rate: 1e6, count: 40 };
    const above = profileLineRise(heat, spectrum, line, 1e-6, 4e-6);
    expectClose(profileLineRise(heat, spectrum, line, 1e-6, -4e-6), above, { relative: 1e-9 });
    const hottest = hottestOfProfile(heat, spectrum, line);
    expect(hottest.x).toBeLessThanOrEqual(0);
    expect(hottest.rise).toBeGreaterThanOrEqual(above);
    console.log(`crossed: ${hottest.rise} K, its Gaussian ${ownLineRise(heat, 2e-6, 1e6, 40)} K`);
  });

  it('once heat has spread beyond the spot, its shape no longer counts', () => {
    const spot = spotAtDefocus(roundStep(1, 1.4), 0);
    const heat = heatOf(spot);
    const age = (3000 * heat.radius ** 2) / (8 * heat.diffusivity);
    const spectrum = heatSpectrum(spot, heat.diffusivity, age, true);
    // Behind a stop rings far out take some per cent of the energy with them.
    expectClose(profilePulseRise(heat, spectrum, 0, 0, age), pulseRise(heat, 0, age), { relative: 1e-2 });
  });
});
