import { describe, expect, it } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { type CrossedPlate, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { type Hatch, lineCount } from '../../lib/process/hatch.ts';
import type { MapGrid, PulsePlaces } from '../../lib/process/mapGrid.ts';
import { pulseMap } from '../../lib/process/pulseMap.ts';
import { pulsesIn } from '../../lib/process/pulsePlaces.ts';
import { type ScaledWork, scaledField, scaledTimes } from '../../lib/process/scaleUp.ts';
import { groupedScans } from '../../lib/process/spotScans.ts';
import { expectClose } from '../close.ts';
import { farCrossedSpot } from './farSpots.ts';
import { work } from './scaledWork.ts';
import { stepScan } from './scanStepped.ts';
import { crossedStep } from './spots.ts';

/** 48 lines 5 µm apart, 0.4 mm long, pulses every 2.5 µm. */
const hatch: Hatch = { ...work.recipe.hatch, width: 0.4e-3, height: 0.24e-3, lineSpacing: 5e-6 };
const small = (spots: number, stride = 1): ScaledWork => ({
  ...work,
  recipe: { ...work.recipe, hatch, pulseSpacing: 2.5e-6 },
  machine: { ...work.machine, spots, distance: stride * hatch.lineSpacing, maxSpeed: 1, maxPower: 1e4 },
  stitching: { moveTime: 1e-3, overlap: 10e-6 },
});
const dt = 1e-8;
const scanOf = (spots: number, stride: number) => ({
  width: hatch.width,
  lineSpacing: hatch.lineSpacing,
  speed: 1,
  acceleration: work.machine.acceleration,
  rate: 1 / 2.5e-6,
  spots,
  stride,
  lines: lineCount(hatch, 0),
});
/** Times are whole steps: one in some 44 000 a line is lost or won at either end. */
const stepped = { relative: 1e-4, source: 'stepped through in time' };

describe('a scan with several spots, stepped through in time', () => {
  it.each([
    [1, 1],
    [4, 12],
    [4, 3],
    [3, 16],
    [48, 1],
  ])('%i spots, %i lines apart, write each line once, in the time and at the rate said', (spots, stride) => {
    const { line, time } = stepScan(scanOf(spots, stride), dt);
    expect([...line].sort((a, b) => a - b)).toEqual(Array.from({ length: 48 }, (_, i) => i));
    const field = scaledField(small(spots, stride));
    expect(field.speed).toBe(1);
    expectClose(field.fieldTime, time, stepped);
    expectClose(field.rate, (0.39e-3 * 0.23e-3) / (time + 1e-3), stepped);
  });

  it('7 spots, which do not divide 48 lines: 7 scans of as many lines, the last not full', () => {
    const { line, time } = stepScan(scanOf(7, 7), dt);
    expect(line.length).toBe(48);
    expectClose(scaledField(small(7, 7)).fieldTime, time, stepped);
  });

  it.each([
    [4, 12, 12],
    [4, 3, 12],
    [4, 5, 15],
    [3, 5, 18],
    [2, 40, 40],
  ])(
    '%i spots %i lines apart need %i scans in fact, groups that are not full counted',
    (spots, stride, scans) => {
      const gone = stepScan(scanOf(spots, stride), dt);
      expect(new Set(gone.line).size).toBe(48);
      expect(gone.scans).toBe(scans);
      expect(groupedScans(48, spots, stride)).toBe(scans);
      expectClose(scaledField(small(spots, stride)).fieldTime, gone.time, stepped);
    },
  );
});

/** Places turned about the middle of the field. */
function turned({ x, y }: { x: ArrayLike<number>; y: ArrayLike<number> }, angle: number): PulsePlaces {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const from = (i: number, a: number, b: number) => a * x[i]! + b * y[i]!;
  return {
    x: Float64Array.from({ length: x.length }, (_, i) => from(i, c, -s)),
    y: Float64Array.from({ length: x.length }, (_, i) => from(i, s, c)),
  };
}

describe('the recipe with a spot of crossed steps', () => {
  const light = crossedStep(1.09, 1.5);
  const z = planeOfDefocus(light, 0.2);
  const spot = spotAt(light, z);
  const far = farCrossedSpot(light, light.plate as CrossedPlate, z, 100);
  const grid: MapGrid = { left: -60e-6, bottom: -60e-6, step: 1e-6, columns: 121, rows: 121 };
  const box = { left: -1, right: 1, bottom: -1, top: 1 };
  const motion = { speed: 1, acceleration: work.machine.acceleration, turnRound: 'outside' } as const;
  const alone = pulsesIn(hatch, [0], motion, 1 / 2.5e-6, box);

  it.each([
    ['0°', 0, 4, 12],
    ['0°', 0, 4, 3],
    ['45°', Math.PI / 4, 4, 12],
    ['45°', Math.PI / 4, 3, 16],
  ])('lines at %s: accumulates the same as one spot does', (_, angle, spots, stride) => {
    const { x, y } = stepScan(scanOf(spots, stride), dt);
    expect(x.length).toBe(alone.x.length);
    const middle = { x: x.map((one) => one - hatch.width / 2), y: y.map((one) => one - hatch.height / 2) };
    const several = turned(middle, angle);
    const map = pulseMap(spot, turned(alone, angle), grid);
    const mean = (spot.effectiveArea * spot.peak) / (2.5e-6 * hatch.lineSpacing);
    const random = createRandom(8302);
    let worst = 0;
    for (let n = 0; n < 25; n++) {
      const column = Math.floor(random.uniform() * grid.columns);
      const row = Math.floor(random.uniform() * grid.rows);
      const [atX, atY] = [grid.left + column * grid.step, grid.bottom + row * grid.step];
      let sum = 0;
      for (let i = 0; i < several.x.length; i++)
        sum += far.irradianceAt(atX - several.x[i]!, atY - several.y[i]!);
      worst = Math.max(worst, Math.abs(sum - map[row * grid.columns + column]!) / mean);
    }
    console.log(`crossed, ${spots} spots: ${worst.toExponential(2)} of the mean`);
    // 1e-4 of the map, and places to v·dt = 10 nm of pulses 2.5 µm apart.
    expectClose(worst, 0, { absolute: 3e-4, source: 'every pulse of every spot' });
  });
});

describe('a hatch that turns', () => {
  it('at 45° takes ⌈lines/4⌉ scans, as long in the mean as its lines are, measured one by one', () => {
    const turns = { ...hatch, width: 0.4e-3, height: 0.3e-3, passes: 2, angle: Math.PI / 4 };
    const turning: ScaledWork = { ...small(4), recipe: { ...small(4).recipe, hatch: turns } };
    const lines = Math.ceil(((turns.width + turns.height) * Math.SQRT1_2) / turns.lineSpacing);
    let sum = 0;
    for (let line = 0; line < lines; line++)
      sum += chordAt45(turns.width, turns.height, (line - (lines - 1) / 2) * turns.lineSpacing);
    const turn = 2 / work.machine.acceleration;
    // The pass before lies along the field: 60 lines, 15 scans.
    const time = Math.ceil(lines / 4) * (sum / lines + turn) + 15 * (turns.width + turn);
    expectClose(scaledTimes(turning, 1).total, time, { relative: 1e-9, source: 'line by line' });
  });
});

/** Chord of a rectangle along (1, 1)/√2 at `offset` to its left, by bisection of its ends. */
function chordAt45(width: number, height: number, offset: number): number {
  const inside = (along: number) => {
    const [x, y] = [(along - offset) * Math.SQRT1_2, (along + offset) * Math.SQRT1_2];
    return Math.abs(x) <= width / 2 && Math.abs(y) <= height / 2;
  };
  // The chord holds the place nearest to the middle of the field along it.
  const steps = 4000;
  const reach = width + height;
  const start = Array.from({ length: steps }, (_, i) => (i / steps - 0.5) * reach).find(inside);
  if (start === undefined) return 0;
  const end = (sign: number) => {
    let [low, high] = [start, start + sign * 2 * reach];
    for (let i = 0; i < 100; i++) {
      const middle = (low + high) / 2;
      if (inside(middle)) low = middle;
      else high = middle;
    }
    return low;
  };
  return end(1) - end(-1);
}
