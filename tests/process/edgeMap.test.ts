import { describe, expect, it } from 'vitest';
import { edgeMap } from '../../lib/process/edgeMap.ts';
import { type EdgeProfile, edgeProfiles } from '../../lib/process/edgeProfile.ts';
import { countingDiameter } from '../../lib/process/fieldChecks.ts';
import type { Hatch } from '../../lib/process/hatch.ts';
import { pulseMap } from '../../lib/process/pulseMap.ts';
import { pulsesIn } from '../../lib/process/pulsePlaces.ts';
import { expectClose } from '../close.ts';
import { crossedStep, roundStep, spotAtDefocus } from './spots.ts';

/** Level of a profile at a distance, in straight lines between its places. */
function levelAt({ distance, level }: EdgeProfile, at: number): number {
  const i = distance.findIndex((d) => d >= at);
  const part = (at - distance[i - 1]!) / (distance[i]! - distance[i - 1]!);
  return level[i - 1]! + part * (level[i]! - level[i - 1]!);
}

const outside = { speed: 1, acceleration: 1e4, turnRound: 'outside' } as const;

describe.each([
  ['round', roundStep(1, 1.4)],
  ['crossed', crossedStep(0.8)],
] as const)('the map of a corner, %s spot', (_, light) => {
  const spot = spotAtDefocus(light, 0);
  const diameter = countingDiameter(spot);
  const field: Hatch = {
    width: 30 * diameter,
    height: 30 * diameter,
    lineSpacing: diameter / 5,
    passes: 1,
    angle: 0,
    interlacing: 1,
    directions: 'both',
  };

  it('pulses and lines in groups: as each by itself', () => {
    const motion = { speed: 1, acceleration: 1 / (5 * diameter), turnRound: 'inside' } as const;
    const fine = { ...field, lineSpacing: diameter / 27 };
    const rate = 48 / diameter;
    const grouped = edgeMap(spot, fine, motion, rate);
    const corner = -field.width / 2;
    const box = { left: -1, right: corner + 13.5 * diameter, bottom: -1, top: corner + 13.5 * diameter };
    const places = pulsesIn(fine, [0], motion, rate, box);
    const { columns, rows, step, left, bottom } = grouped;
    // Every sixth place: all of them would take seconds.
    const some = { left: left + corner, bottom: bottom + corner, step: 6 * step, columns: 15, rows: 15 };
    const sum = pulseMap(spot, places, some);
    const mean = (spot.peak * spot.effectiveArea * rate) / fine.lineSpacing;
    expect([columns, rows]).toEqual([85, 85]);
    sum.forEach((value, n) => {
      const at = 6 * Math.floor(n / 15) * columns + 6 * (n % 15);
      expectClose(grouped.level[at]!, value / mean, { absolute: 0.01, source: 'every pulse and line' });
    });
  });

  it('far from the edges 1 on average; the corner of turned passes gets the excess of both', () => {
    const motion = { speed: 1, acceleration: 1 / (5 * diameter), turnRound: 'inside' } as const;
    const parts: number[] = [];
    const turned = { ...field, passes: 2, angle: Math.PI / 2 };
    const map = edgeMap(spot, turned, motion, 12 / diameter, (part) => parts.push(part));
    const at = (x: number, y: number) =>
      map.level[
        Math.round((y * diameter - map.bottom) / map.step) * map.columns +
          Math.round((x * diameter - map.left) / map.step)
      ]!;
    expectClose(at(5, 5), 1, { absolute: 0.05, source: 'mean of a wide field' });
    // At the ends of one pass’s lines, beside those of the other: the mean of both edges.
    const { ends, sides } = edgeProfiles(spot, field, motion);
    const level = (levelAt(ends, 0.5 * diameter) + levelAt(sides, 0.5 * diameter)) / 2;
    // Averaged over five lines, since the integral knows none.
    const along =
      Array.from({ length: 12 }, (_, row) => at(0.5, 4 + row / 12)).reduce((a, b) => a + b, 0) / 12;
    expectClose(along, level, {
      relative: 0.02,
      source: '1-D integral; tails from beyond 8 diameters are left out',
    });
    expectClose(at(0.5, 5), at(5, 0.5), { absolute: 0.02, source: 'symmetry' });
    expect(parts.every((part) => part >= 0 && part <= 1)).toBe(true);
  });

  it('turn outside: a quarter of the mean in the corner, half at the edges', () => {
    const map = edgeMap(spot, { ...field, lineSpacing: diameter / 16 }, outside, 12 / diameter);
    const at = (x: number, y: number) =>
      map.level[
        Math.round((y * diameter - map.bottom) / map.step) * map.columns +
          Math.round((x * diameter - map.left) / map.step)
      ]!;
    expectClose(at(0, 0), 0.25, { absolute: 0.01, source: 'symmetry' });
    expectClose(at(0, 4), 0.5, { absolute: 0.01, source: 'symmetry' });
    expectClose(at(4, 0), 0.5, { absolute: 0.01, source: 'symmetry' });
  });
});
