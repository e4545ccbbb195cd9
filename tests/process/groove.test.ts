import { describe, expect, it } from 'vitest';
import { planeOfDefocus, rayleighLength } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { CuttingLaw } from '../../lib/process/cuttingLaw.ts';
import { sampleCuttingLight } from '../../lib/process/cuttingLight.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { cutGroove, type Groove } from '../../lib/process/groove.ts';
import { shapeOf } from '../../lib/process/grooveShape.ts';
import { removalLaw, volumeAtPeak } from '../../lib/process/removal.ts';
import { expectClose } from '../close.ts';
import { crossedStep, roundStep } from './spots.ts';

const radius = 10e-6;
const first = 2000;
const ratio = 10;
const delta = 20e-9;
const spacing = 0.5e-6;
const incubation = { first, exponent: 1, floor: 0 };
const law: CuttingLaw = { depth: delta, incubation };
const train = { unit: ratio * first, pulseSpacing: spacing, pulsesPerBurst: 1, law };
const gaussian = gaussianSpot(radius);

/** The light of a spot that stays the same however deep. */
function deepLight(across: number, along = 64) {
  return sampleCuttingLight({
    spotAtDepth: () => gaussian,
    planeStep: 1e-6,
    level: Math.exp(-2) / ratio,
    depth: 1e-6,
    direction: 0,
    mirrored: true,
    steps: { across, along },
  });
}

/** (2√2/3)(δ w/p)[ln(F0/F_th) − 2y²/w²]^{3/2}. */
function closedDepth(y: number): number {
  const above = Math.log(ratio) - (2 * y * y) / (radius * radius);
  return above > 0 ? ((2 * Math.SQRT2) / 3) * ((delta * radius) / spacing) * above ** 1.5 : 0;
}

describe('a groove of a Gaussian', () => {
  const source = 'closed form: integral of the logarithmic law along the line';
  it('is that of the closed form at every place', () => {
    const { y, depth } = cutGroove(deepLight(96), { ...train, passes: 1 });
    y.forEach((place, i) => {
      expectClose(depth[i]!, closedDepth(place), { absolute: 1e-6 * closedDepth(0), source });
    });
  });

  it('grows in proportion to the passes as long as its walls are shallow', () => {
    // Slopes of 1e-5 take 1e-10 of the fluence.
    const shallow = { ...law, depth: 1e-5 * delta };
    const { y, depth } = cutGroove(deepLight(96), { ...train, law: shallow, passes: 20 });
    y.forEach((place, i) => {
      const expected = 20e-5 * closedDepth(place);
      expectClose(depth[i]!, expected, { absolute: 20e-11 * closedDepth(0), source });
    });
  });

  it('has the widths, the ratio of centre to mean depth and the angle of the closed form', () => {
    const shape = shapeOf(cutGroove(deepLight(192), { ...train, passes: 1 }))!;
    const top = 2 * radius * Math.sqrt(Math.log(ratio) / 2);
    // (1 − u²)^{3/2} = 0.9 and 0.1; samples straight in depth^{2/3} are wrong by the square of a step.
    const at = (part: number) => (top / 2) * Math.sqrt(1 - part ** (2 / 3));
    const close = { relative: 1e-4, source };
    expectClose(shape.topWidth, top, close);
    expectClose(shape.centreToMeanDepth, 16 / (3 * Math.PI), close);
    expectClose(shape.bottomWidth, 2 * at(0.9), { relative: 1e-3, source });
    expectClose(shape.wallAngle, Math.atan((0.6 * closedDepth(0)) / (at(0.2) - at(0.8))), {
      relative: 1e-3,
      source,
    });
    expect(shape.besideDepth).toBeLessThan(1e-3 * shape.depth);
  });
});

describe('walls', () => {
  const edge = radius * Math.sqrt(Math.log(ratio) / 2);
  const slopeAt = (y: number) =>
    Math.sqrt(Math.max(0, (ratio * Math.exp((-2 * y * y) / radius ** 2)) ** 2 - 1));
  /** Depth at which all walls have stopped: the slope √((F/F_th)² − 1) added up from the edge. */
  function lastDepth(y: number): number {
    const steps = 4000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += slopeAt(y + ((edge - y) * (i + 0.5)) / steps);
    return (sum * (edge - y)) / steps;
  }

  it('stop where the fluence on the slope is the threshold', () => {
    const groove = cutGroove(deepLight(96), { ...train, passes: 3000 });
    const deepest = lastDepth(0);
    const middle = (groove.y.length - 1) / 2;
    // A step of 0.15 µm: its square against that of the radius is 2e-4, more at the edge, where the slope begins as a root.
    groove.y.forEach((y, i) => {
      if (Math.abs(y) >= edge || i % 8 !== 0) return;
      expectClose(groove.depth[i]!, lastDepth(Math.abs(y)), {
        absolute: 1e-3 * deepest,
        source: 'closed form',
      });
    });
    expect(groove.lastPass[middle]).toBeLessThan(1e-4 * closedDepth(0));
    const wall = groove.y.findIndex((y) => y > 0.5 * edge);
    expectClose(groove.slope[wall]!, slopeAt(groove.y[wall]!), { relative: 0.01, source: 'closed form' });
  });

  it('never let a groove come deeper than where they stop', () => {
    for (const passes of [1, 10, 100]) {
      const { y, depth } = cutGroove(deepLight(64), { ...train, passes });
      y.forEach((place, i) => {
        // The error of the grid, as above.
        const limit = lastDepth(Math.min(edge, Math.abs(place)));
        expect(depth[i]).toBeLessThanOrEqual(limit + 1e-3 * lastDepth(0));
      });
    }
  });
});

/** The family of a plate from a plane on, down into the workpiece. */
function cutIn(
  light: ReturnType<typeof roundStep>,
  zeta: number,
  options: Partial<{ across: number; along: number; direction: number; peak: number }> = {},
) {
  const z = planeOfDefocus(light, zeta);
  const surface = spotAt(light, z);
  const unit = ((options.peak ?? 8) * first) / surface.peak;
  const mirrored = light.plate.kind === 'round';
  const cutting = sampleCuttingLight({
    spotAtDepth: (depth) => spotAt(light, z + depth),
    planeStep: rayleighLength(light) / 20,
    level: (Math.exp(-2) * first) / unit,
    depth: 20e-6,
    direction: options.direction ?? 0,
    mirrored,
    steps: { across: options.across ?? 96, along: options.along ?? 64 },
  });
  return { surface, unit, cutting };
}

describe('volume', () => {
  it.each([
    ['a ring in the focus', roundStep(1), 0, 0],
    ['a flat-top behind a stop', roundStep(1, 1.4), 0.42, 0],
    ['a crossed step along an axis', crossedStep(1.05), 0.3, 0],
    ['a crossed step at 45°', crossedStep(1.05), 0.3, Math.PI / 4],
  ] as const)('is that of the pulses: %s', (_, light, zeta, direction) => {
    const { surface, unit, cutting } = cutIn(light, zeta, { direction, across: 192, along: 128 });
    const { area } = cutGroove(cutting, { ...train, unit, passes: 1 });
    const volume = volumeAtPeak(surface, removalLaw({ depth: delta, threshold: first }), unit * surface.peak);
    // Areas of spots that are not round are sampled to 1e-4; trapezoids across a threshold to the square of the step.
    expectClose(area[1]! * spacing, volume, { relative: 5e-4, source: 'volume of one pulse' });
  });

  it('with two branches too', () => {
    const two: CuttingLaw = { ...law, second: { depth: 80e-9, threshold: 5000 } };
    const { surface, unit, cutting } = cutIn(roundStep(1, 1.4), 0.42, { across: 192, along: 128 });
    const { area } = cutGroove(cutting, { ...train, law: two, unit, passes: 1 });
    const both = removalLaw({ depth: delta, threshold: first }, two.second);
    expectClose(area[1]! * spacing, volumeAtPeak(surface, both, unit * surface.peak), {
      relative: 5e-4,
      source: 'volume of one pulse',
    });
  });
});

describe('refinement', () => {
  const depths = (across: number): Groove =>
    cutGroove(cutIn(roundStep(1, 1.4), -0.42, { across, peak: 20 }).cutting, {
      ...train,
      unit: cutIn(roundStep(1, 1.4), -0.42, { peak: 20 }).unit,
      passes: 8,
    });

  it('converges in the middle with an order of one or more, in the area with nearly two', () => {
    const [coarse, middle, fine, finest] = [24, 48, 96, 384].map(depths) as [Groove, Groove, Groove, Groove];
    const errors = [coarse, middle, fine].map((one) => ({
      deep: Math.abs(one.deepest.at(-1)! - finest.deepest.at(-1)!) / finest.deepest.at(-1)!,
      area: Math.abs(one.area.at(-1)! - finest.area.at(-1)!) / finest.area.at(-1)!,
    }));
    expect(errors[2]!.deep).toBeLessThan(1e-3);
    expect(errors[2]!.area).toBeLessThan(3e-3);
    expect(Math.log2(errors[0]!.deep / errors[2]!.deep) / 2).toBeGreaterThan(1);
    expect(Math.log2(errors[0]!.area / errors[2]!.area) / 2).toBeGreaterThan(1.3);
  });

  it('nodes along the line change nothing', () => {
    const at = (along: number) => {
      const { cutting, unit } = cutIn(roundStep(1, 1.4), -0.42, { along });
      return cutGroove(cutting, { ...train, unit, passes: 4 });
    };
    const [usual, fine] = [at(64), at(256)];
    usual.depth.forEach((depth, i) => {
      expectClose(depth, fine.depth[i]!, { absolute: 2e-4 * fine.deepest[4]!, source: 'finer nodes' });
    });
  });
});

describe('incubation along the line', () => {
  /** Every pulse of one pass on a level surface, at many shifts of the place against the pulses. */
  function oneByOne(y: number, exponent: number, passes: number, burst: number): number {
    const shifts = 64;
    const counting = first * Math.exp(-2);
    let sum = 0;
    for (let shift = 0; shift < shifts; shift++) {
      let pulses = 0;
      for (let pass = 0; pass < passes; pass++) {
        for (let x = -6 * radius + ((shift + 0.5) / shifts) * spacing; x < 6 * radius; x += spacing) {
          const fluence = train.unit * gaussian.irradianceAt(x, y);
          if (fluence <= counting) continue;
          for (let b = 0; b < burst; b++) {
            pulses += 1;
            sum += Math.max(0, 1e-5 * delta * Math.log(fluence / (first * pulses ** (exponent - 1))));
          }
        }
      }
    }
    return sum / shifts;
  }

  it.each([
    [0.85, 1, 1],
    [0.7, 1, 1],
    [0.85, 3, 1],
    [0.85, 1, 3],
    [0.85, 30, 1],
  ])('exponent %d, %d passes, bursts of %d', (exponent, passes, burst) => {
    const one = { depth: 1e-5 * delta, incubation: { first, exponent, floor: 0 } };
    const { y, depth } = cutGroove(deepLight(48, 128), { ...train, law: one, pulsesPerBurst: burst, passes });
    const middle = (y.length - 1) / 2;
    for (const i of [0, 12, 24, 36]) {
      const expected = oneByOne(y[middle + i]!, exponent, passes, burst);
      // The count of later passes begins with the mean number of the passes before: a pulse more or less in 50.
      expectClose(depth[middle + i]!, expected, {
        absolute: 1e-3 * oneByOne(0, exponent, passes, burst),
        source: 'every pulse one by one',
      });
    }
  });
});
