import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { focusRadius } from '../../lib/optics/light.ts';
import { type EdgeProfile, edgeProfiles, edgeWidth, highestLevel } from '../../lib/process/edgeProfile.ts';
import { countingDiameter } from '../../lib/process/fieldChecks.ts';
import { type Hatch, lineAt, lineCount, writtenLine } from '../../lib/process/hatch.ts';
import { lineMotion, placeAt, timeAt } from '../../lib/process/lineMotion.ts';
import { pulseMap } from '../../lib/process/pulseMap.ts';
import { pulsesIn, turnOf } from '../../lib/process/pulsePlaces.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

const w0 = focusRadius(gaussianLight);
const hatch: Hatch = {
  width: 60 * w0,
  height: 40 * w0,
  lineSpacing: w0 / 3,
  passes: 1,
  angle: 0,
  interlacing: 1,
  directions: 'both',
};
const outside = { speed: 1, acceleration: 1e4, turnRound: 'outside' } as const;
/** Overscan v²/(2a) of 5 w0. */
const inside = { speed: 1, acceleration: 1 / (10 * w0), turnRound: 'inside' } as const;
const everywhere = { left: -1, right: 1, bottom: -1, top: 1 };

/** Gauss error function by its series and continued fraction, good to 1e-7 (Abramowitz & Stegun 7.1.26 (memory)). */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const sum = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  return Math.sign(x) * (1 - sum * Math.exp(-x * x));
}

describe('order of lines and run along one', () => {
  it('the turn of a line is the inverse of the line of a turn', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 20 }), (count, interlacing) => {
        for (let turn = 0; turn < count; turn++)
          expect(turnOf(count, interlacing, writtenLine(count, interlacing, turn))).toBe(turn);
      }),
      { seed: 1 },
    );
  });

  it('place and time are inverse to each other, with and without full speed in between', () => {
    for (const length of [60 * w0, 4 * w0]) {
      const run = lineMotion(length, inside);
      expectClose(placeAt(run, run.time), length, { relative: 1e-12 });
      for (let i = 1; i < 20; i++)
        expectClose(timeAt(run, placeAt(run, (run.time * i) / 20)), (run.time * i) / 20, { relative: 1e-9 });
    }
    const run = lineMotion(60 * w0, inside);
    expectClose(run.time, 60 * w0 + 2 * 5 * w0, { relative: 1e-12, source: 'L/v + v/a' });
    expectClose(placeAt(run, 4 * w0), ((4 * w0) ** 2 / (10 * w0)) * 0.5, {
      relative: 1e-12,
      source: 'a t²/2',
    });
  });
});

describe('where pulses land', () => {
  it('outside: as many as fit on each line, half a spacing from both ends', () => {
    const { x, y } = pulsesIn(hatch, [0], outside, 1 / (w0 / 2), everywhere);
    expect(x.length).toBe(120 * lineCount(hatch, 0));
    expectClose(Math.min(...x), -29.75 * w0, { relative: 1e-9, source: 'half a spacing inside' });
    expectClose(Math.max(...x), 29.75 * w0, { relative: 1e-9, source: 'half a spacing inside' });
    expectClose(Math.min(...y), lineAt(hatch, 0, 0).fromY, { relative: 1e-12 });
  });

  it('inside: crowded at the ends, f·√(2x/a) within x of one', () => {
    const rate = 200 / w0;
    const one = { ...hatch, height: w0 / 3 };
    const { x } = pulsesIn(one, [0], inside, rate, everywhere);
    const near = [...x].filter((at) => at < -29 * w0).length;
    expectClose(near, rate * Math.sqrt(2 * w0 * 10 * w0), { absolute: 1, source: 'x = a t²/2' });
  });

  it('a box holds those pulses of the whole field that lie in it, turned and interlaced too', () => {
    const turned = { ...hatch, passes: 3, angle: 1.1, interlacing: 4, directions: 'one' } as const;
    const rate = 3 / w0;
    const box = { left: -31 * w0, right: -20 * w0, bottom: -21 * w0, top: -12 * w0 };
    for (const motion of [outside, inside]) {
      const all = pulsesIn(turned, [0, 1, 2], motion, rate, everywhere);
      const within = [...all.x].filter((x, i) => {
        const y = all.y[i]!;
        return x >= box.left && x <= box.right && y >= box.bottom && y <= box.top;
      });
      const some = pulsesIn(turned, [0, 1, 2], motion, rate, box);
      expect(some.x.length).toBe(within.length);
      expect(within.length).toBeGreaterThan(200);
      expectClose(
        some.x.reduce((a, b) => a + b, 0),
        within.reduce((a, b) => a + b, 0),
        { relative: 1e-9 },
      );
    }
  });
});

describe.each([
  ['Gaussian', gaussianLight],
  ['round', roundStep(1, 1.4)],
  ['crossed', crossedStep(0.8)],
] as const)('%s spot', (_, light) => {
  const spot = spotAtDefocus(light, 0);
  const diameter = countingDiameter(spot);

  it('pulses summed and averaged along the edge are the integral, excess and width too', () => {
    const field = { ...hatch, width: 30 * diameter, height: 20 * diameter, lineSpacing: diameter / 12 };
    const motion = { speed: 1, acceleration: 1 / (5 * diameter), turnRound: 'inside' } as const;
    const profile = edgeProfiles(spot, field, motion).ends;
    const rate = 16 / diameter;
    const [columns, rows] = [121, 12];
    const grid = { left: -field.width / 2 - diameter, bottom: 0, step: diameter / 12, columns, rows };
    // Tails from further away are 1 % of the energy of a spot.
    const box = {
      left: -1,
      right: -field.width / 2 + 14 * diameter,
      bottom: -7 * diameter,
      top: 8 * diameter,
    };
    const sum = pulseMap(spot, pulsesIn(field, [0], motion, rate, box), grid);
    const wide = (spot.peak * spot.effectiveArea * rate) / field.lineSpacing;
    const mean = (column: number) => {
      let all = 0;
      for (let row = 0; row < rows; row++) all += sum[row * columns + column]!;
      return all / rows;
    };
    for (let column = 0; column <= 84; column += 4) {
      const at = column * grid.step - diameter;
      const i = profile.distance.findIndex((d) => d >= at);
      const part = (at - profile.distance[i - 1]!) / (profile.distance[i]! - profile.distance[i - 1]!);
      const level = profile.level[i - 1]! + part * (profile.level[i]! - profile.level[i - 1]!);
      expectClose(mean(column) / wide, level, {
        absolute: 0.01,
        relative: 0.01,
        source: 'pulses one by one',
      });
    }
    const highest = Math.max(...Array.from({ length: columns }, (_, i) => mean(i) / wide));
    expectClose(highestLevel(profile), highest, { relative: 0.02, source: 'pulses one by one' });
    expect(highest).toBeGreaterThan(1.5);
  });
});

describe('the edge by its integral', () => {
  const spot = spotAtDefocus(gaussianLight, 0);
  const at = ({ distance, level }: EdgeProfile, place: number) =>
    level[
      distance.reduce((best, d, i) => (Math.abs(d - place) < Math.abs(distance[best]! - place) ? i : best), 0)
    ]!;

  it('turn outside, Gaussian: (1 + erf(√2 x/w))/2, at ends and sides, whatever the angle', () => {
    for (const [edge, angle, passes] of [
      ['ends', 0, 1],
      ['sides', 0, 1],
      ['ends', 0.7, 3],
      ['sides', 0.7, 3],
    ] as const) {
      const profile = edgeProfiles(spot, { ...hatch, angle, passes }, outside)[edge];
      profile.distance.forEach((x, i) => {
        if (x < 10 * w0)
          expectClose(profile.level[i]!, (1 + erf((Math.SQRT2 * x) / w0)) / 2, {
            absolute: 2e-3,
            source: 'closed form',
          });
      });
      expect(highestLevel(profile)).toBeLessThan(1.002);
      // erf(√2 x/w) = 0.9.
      expectClose(edgeWidth(profile, 0.05)!, (1.16309 / Math.SQRT2) * w0, {
        relative: 5e-3,
        source: 'inverse erf',
      });
    }
  });

  it('turn inside, slowly: far from the spot’s size v/√(2ax), to 5 % at a tenth less than the overscan', () => {
    const slow = { ...inside, acceleration: 1 / (80 * w0) };
    const profile = edgeProfiles(spot, { ...hatch, width: 400 * w0 }, slow).ends;
    // Overscan 40 w0: v/√(2 a x) = √(40 w0/x).
    expectClose(at(profile, 10 * w0), 2, { relative: 0.02, source: '√(40/10)' });
    expectClose(edgeWidth(profile, 0.05)!, (40 * w0) / 1.05 ** 2, {
      relative: 0.02,
      source: '√(40 w0/x) = 1.05',
    });
    // The sides know nothing of it.
    expect(highestLevel(edgeProfiles(spot, { ...hatch, width: 400 * w0 }, slow).sides)).toBeLessThan(1.002);
  });

  it('energy is kept: what the ramp adds is the time it takes', () => {
    const profile = edgeProfiles(spot, hatch, inside).ends;
    let area = 0;
    for (let i = 1; i < profile.level.length; i++)
      area +=
        ((profile.level[i]! + profile.level[i - 1]!) / 2) * (profile.distance[i]! - profile.distance[i - 1]!);
    // Half the line's time times v: L/2 + v²/(2a).
    const end = profile.distance.at(-1)!;
    expectClose(area, end + 5 * w0, { relative: 5e-3, source: 'v × time' });
  });

  it('a field in which full speed is never reached has no width of an edge', () => {
    const short = edgeProfiles(spot, { ...hatch, width: 6 * w0 }, inside).ends;
    expect(edgeWidth(short, 0.05)).toBeUndefined();
  });
});
