import { describe, expect, it, test } from 'vitest';
import { createRandom } from '../../lib/numerics/random.ts';
import { focusRadius } from '../../lib/optics/light.ts';
import { markOf, meanAbove, stretchesOf } from '../../lib/process/marks.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { crossedStep, gaussianLight, roundStep, spotAtDefocus } from './spots.ts';

const width = focusRadius(gaussianLight);
const gaussian = spotAtDefocus(gaussianLight, 0);

describe('the mark of a Gaussian', () => {
  test.each([1.05, 2, Math.E ** 2, 30])('peak %f times the threshold', (ratio) => {
    const mark = markOf(gaussian, gaussian.peak / ratio);
    const source = 'J. M. Liu, Opt. Lett. 7, 196 (1982)';
    expectClose(mark.area, ((Math.PI * width ** 2) / 2) * Math.log(ratio), { relative: 1e-8, source });
    expectClose(mark.outerDiameter ** 2, 2 * width ** 2 * Math.log(ratio), { relative: 1e-8, source });
    expect(mark.innerDiameter).toBe(0);
    const mean = (1 - 1 / ratio) / Math.log(ratio);
    expectClose(meanAbove(gaussian, gaussian.peak / ratio)!, mean, { relative: 1e-8, source: 'integral' });
  });

  it('is nothing at threshold and below', () => {
    for (const level of [gaussian.peak, 1.5 * gaussian.peak]) {
      expect(markOf(gaussian, level)).toEqual({ area: 0, outerDiameter: 0, innerDiameter: 0, cut: false });
      expect(meanAbove(gaussian, level)).toBeUndefined();
    }
    expect(() => markOf(gaussian, 0)).toThrow(/above 0/);
    expect(() => markOf(gaussian, Number.NaN)).toThrow(/above 0/);
  });
});

/** Behind the step: no stop in four of ten, else one 0.2 to 1.2 beam radii wider. */
const stopBehind = (ratio: number, random: () => number) => (random() < 0.4 ? 0 : ratio + 0.2 + random());
const plates = [
  [
    'round steps',
    (random: () => number) => {
      const ratio = 0.7 + 0.8 * random();
      return roundStep(ratio, stopBehind(ratio, random));
    },
  ],
  [
    'crossed steps',
    (random: () => number) => {
      const ratio = 0.5 + 0.8 * random();
      return crossedStep(ratio, stopBehind(ratio, random));
    },
  ],
] as const;

describe.each(plates)('ring marks behind %s', (kind, drawn) => {
  it('have an unmarked centre exactly where the dip lies below threshold', () => {
    const random = createRandom(4711);
    const share = () => random.between(0, 1);
    let rings = 0;
    const planes = kind === 'round steps' ? cases(200, 40) : cases(30, 6);
    for (let plane = 0; plane < planes; plane++) {
      const spot = spotAtDefocus(drawn(share), 3 * share() - 1.5);
      const axis = spot.irradianceAt(0, 0);
      // Energies from just below threshold to thirty times it, and both sides of where the centre gets its mark.
      const levels = [...Array.from({ length: 12 }, () => spot.peak * 1.05 * 30 ** -share())];
      if (axis > 0.02 * spot.peak) levels.push(axis * (1 - 1e-6), axis * (1 + 1e-6));
      for (const level of levels) {
        const mark = markOf(spot, level);
        const ring = level < spot.peak && axis <= level;
        expect(mark.innerDiameter > 0, `${kind}: axis ${axis}, level ${level}, peak ${spot.peak}`).toBe(ring);
        expect(mark.area > 0).toBe(level < spot.peak);
        expect(mark.outerDiameter > mark.innerDiameter || mark.area === 0).toBe(true);
        if (ring) rings++;
      }
    }
    console.log(`${kind}: ${rings} ring marks in ${planes} planes`);
    expect(rings).toBeGreaterThan(planes / 2);
  });
});

it('says where the mark goes on beyond the light computed', () => {
  const far = spotAtDefocus(roundStep(1), 5.5667);
  expect(markOf(far, far.peak / 5).cut).toBe(false);
  expect(markOf(far, far.peak / 5000).cut).toBe(true);
  // Nowhere below the level as far as computed: still a mark, as large as is known.
  const whole = markOf(far, 1e-12 * far.peak);
  expect(whole.cut).toBe(true);
  expect(whole.outerDiameter).toBeGreaterThanOrEqual(markOf(far, far.peak / 5000).outerDiameter);
  expectClose((Math.PI / 4) * whole.outerDiameter ** 2, whole.area, { relative: 0.05, absolute: 0 });
});

describe('contours enclose the area marked', () => {
  test.each([
    ['round ring', roundStep(0.9, 1.4), 0, 1e-10],
    ['round, one contour', roundStep(1, 1.4), 0.423, 1e-10],
    // Areas of a grid are to 1e-4.
    ['crossed, one contour', crossedStep(1.0877, 1.5), 0, 3e-4],
  ] as const)('%s', (_, light, defocus, relative) => {
    const spot = spotAtDefocus(light, defocus);
    for (const share of [0.75, 0.5, 0.3]) {
      const { area, outerDiameter, innerDiameter } = markOf(spot, share * spot.peak);
      const ring = (Math.PI / 4) * (outerDiameter ** 2 - innerDiameter ** 2);
      expectClose(ring, area, { relative, source: 'areaAbove' });
    }
  });

  it('and the mean over a mark of crossed steps is that of a count', () => {
    const spot = spotAtDefocus(crossedStep(1.0877, 1.5), 0);
    for (const share of [0.7, 0.3]) {
      const level = share * spot.peak;
      let [sum, count] = [0, 0];
      for (let i = 0; i < 400 * 400; i++) {
        const [x, y] = [((i % 400) + 0.5) * 0.005 * width, (Math.floor(i / 400) + 0.5) * 0.005 * width];
        const irradiance = spot.irradianceAt(x, y);
        if (irradiance <= level) continue;
        sum += irradiance;
        count++;
      }
      expectClose(meanAbove(spot, level)!, sum / count, { relative: 1e-3, source: 'count over 400² points' });
      const lines = stretchesOf(spot, level);
      expect(lines.length).toBeGreaterThan(8);
      for (const { angle, marked } of lines) {
        const radius = marked.at(-1)!.to;
        const edge = spot.irradianceAt(radius * Math.cos(angle), radius * Math.sin(angle));
        expectClose(edge, level, { relative: 1e-8, source: 'contour' });
      }
    }
  });

  it('and the lines through it are as long as the contours lie apart', () => {
    const spot = spotAtDefocus(roundStep(0.9, 1.4), 0);
    const level = 0.5 * spot.peak;
    const mark = markOf(spot, level);
    const [line] = stretchesOf(spot, level);
    expectClose(2 * line!.marked[0]!.from, mark.innerDiameter, { relative: 1e-12 });
    expectClose(2 * line!.marked.at(-1)!.to, mark.outerDiameter, { relative: 1e-12 });
  });
});
