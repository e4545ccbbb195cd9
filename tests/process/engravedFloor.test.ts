import { describe, expect, it } from 'vitest';
import type { Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { CuttingLaw } from '../../lib/process/cuttingLaw.ts';
import { engravedFloor } from '../../lib/process/engravedFloor.ts';
import { engrave } from '../../lib/process/engraving.ts';
import { type LayerPlan, layerMaps } from '../../lib/process/engravingMaps.ts';
import type { EngravingBeam } from '../../lib/process/engravingPlanes.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { floorByHand } from './engravingByHand.ts';
import { crossedStep, roundStep } from './spots.ts';

const rayleigh = 131e-6;
const steady: CuttingLaw = { depth: 20e-9, incubation: { first: 2000, exponent: 1, floor: 0 } };
const laws: readonly (readonly [name: string, law: CuttingLaw])[] = [
  ['one branch', steady],
  ['incubation', { ...steady, incubation: { first: 2000, exponent: 0.85, floor: 600 } }],
  [
    'two branches',
    {
      ...steady,
      incubation: { first: 2000, exponent: 0.9, floor: 0 },
      second: { depth: 60e-9, threshold: 12e3 },
    },
  ],
];
const beamOf = (light: Light): EngravingBeam => ({
  spotAt: (z) => spotAt(light, z),
  plane: 0,
  rayleigh,
  finest: 13e-6,
  unit: 50e3,
  furthest: 11 * rayleigh,
});
const lights: readonly (readonly [name: string, light: Light])[] = [
  ['round step', roundStep(1, 1.4)],
  ['crossed steps', crossedStep(1.09, 1.5)],
];
const trials = lights.flatMap(([spot, light]) =>
  laws
    .slice(0, cases(3, 2))
    .flatMap(([name, law]) =>
      [0, Math.PI / 4].map((turn) => ({ name: `${spot}, ${name}, turn ${turn}`, light, law, turn })),
    ),
);
const layers = 4;

/** Mean, and root mean square deviation, of the floor by the cell from that by hand, over the mean depth. */
function compared(beam: EngravingBeam, plan: LayerPlan, fineness: number) {
  const patch = { x: 213e-6, y: 137e-6, side: 26e-6, points: 20 };
  const hand = floorByHand(beam, plan, layers, patch, 35e-6);
  const maps = layerMaps(beam, plan, fineness);
  const engraved = engrave(beam, plan, { layers, depth: 0, most: 100 }, undefined, maps);
  const floor = engravedFloor(maps, engraved, layers, plan.turn, patch);
  const mean = hand.depth.reduce((sum, depth) => sum + depth, 0) / hand.depth.length;
  const spread = (deviations: Float64Array) =>
    Math.sqrt(deviations.reduce((sum, off) => sum + off * off, 0) / deviations.length);
  const rms = spread(hand.depth.map((depth) => depth - mean));
  const off = spread(hand.depth.map((depth, i) => depth - floor.depth[i]!)) / mean;
  return { floor, mean, rms, off, engraved };
}

describe('the floor against every pulse on a real patch', () => {
  it.each(trials)('$name', ({ light, law, turn }) => {
    const plan = { law, lattice: { along: 12e-6, across: 14e-6, pulses: 1 }, turn };
    const { floor, mean, rms, off } = compared(beamOf(light), plan, 1);
    const source = 'irradiance of every pulse, whole numbers of pulses, no cell and no interpolation';
    // Bilinear reading rounds the edges of craters; with incubation they lie a little off for layers between nodes.
    const edge = law.incubation.exponent === 1 ? 4e-3 : 8e-3;
    expectClose(off, 0, { absolute: edge, source });
    expectClose(floor.mean, mean, { relative: edge / 2, source });
    expectClose(floor.rms, rms, { absolute: edge * mean, source });
  });

  it('a field of dense, overlapping pulses', () => {
    const plan = { law: laws[1]![1], lattice: { along: 2e-6, across: 5e-6, pulses: 2 }, turn: Math.PI / 4 };
    const { floor, mean, rms, off } = compared(beamOf(lights[0]![1]), plan, 1);
    expectClose(off, 0, { absolute: 2e-3 });
    expectClose(floor.mean, mean, { relative: 1e-3 });
    expectClose(floor.rms, rms, { absolute: 1e-3 * mean });
  });

  it('comes closer as the grid is refined', () => {
    const plan = { law: steady, lattice: { along: 12e-6, across: 14e-6, pulses: 1 }, turn: 0 };
    const [coarse, middle, fine] = [1, 2, 4].map((fineness) => {
      return compared(beamOf(lights[0]![1]), plan, fineness).off;
    });
    // Of order 2 between the edges of craters and of order 1 on them, which fill a part of the area like the step: 3/2 in
    // all, uneven as edges fall between points (1.4 measured over a factor of 16). At least order 1 is asked for.
    expect(coarse! / fine!).toBeGreaterThan(4);
    expect(middle!).toBeLessThan(coarse!);
    expect(fine!).toBeLessThan(1e-3);
  });
});

describe('many layers', () => {
  const beam: EngravingBeam = {
    ...beamOf(lights[0]![1]),
    spotAt: () => gaussianSpot(10e-6),
    rayleigh: 1,
    furthest: 10,
  };
  const patch = { x: 2.5e-3, y: 2.5e-3, side: 60e-6, points: 48 };
  const floorOf = (turn: number, count: number) => {
    const plan = { law: steady, lattice: { along: 12e-6, across: 14e-6, pulses: 1 }, turn };
    const maps = layerMaps(beam, plan);
    const engraved = engrave(beam, plan, { layers: count, depth: 0, most: 1e4 }, undefined, maps);
    // All layers were engraved, and the floor is theirs: nothing below compares 0 with 0.
    expect(engraved.depth.length).toBe(count + 1);
    expect(engraved.depth[count]!).toBeGreaterThan(0);
    return engravedFloor(maps, engraved, count, turn, patch);
  };

  it('without a turn the roughness grows with the layers', () => {
    expectClose(floorOf(0, 50).rms, 50 * floorOf(0, 1).rms, { relative: 1e-9, source: 'the same cell' });
  });

  it('at angles of their own it grows with the root of their number', () => {
    const once = floorOf(0, 1).rms;
    const turned = floorOf((67.3 * Math.PI) / 180, 100).rms;
    // Deviations of unlike layers add as squares. Over a patch of 21 cells they scatter by 1/√21, a fifth: 0.75 to 1.2 times
    // this was met for four turns, four places and up to 300 layers.
    expectClose(turned, 10 * once, { relative: 0.3, source: 'sum of squares' });
  });

  it('at very many angles fewer points are seen, and each is what it would be among more', () => {
    const turn = (67.31 * Math.PI) / 180;
    const floor = floorOf(turn, 2880);
    expect(floor.patch.points).toBe(24);
    const plan = { law: steady, lattice: { along: 12e-6, across: 14e-6, pulses: 1 }, turn };
    const maps = layerMaps(beam, plan);
    const engraved = engrave(beam, plan, { layers: 2880, depth: 0, most: 1e4 }, undefined, maps);
    // A patch of two points each way lies on the corners of the other.
    const corners = engravedFloor(maps, engraved, 2880, turn, { ...patch, points: 2 }).depth;
    const across = floor.patch.points;
    const same = [0, across - 1, across * (across - 1), across * across - 1];
    same.forEach((point, i) => {
      expectClose(floor.depth[point]!, corners[i]!, { relative: 1e-12, source: 'the same place' });
    });
    // No rule of growth stands in for layers: the mean is that of all of them.
    expectClose(floor.mean, engraved.depth[2880]!, { relative: 5e-3, source: 'mean of the cell' });
  });

  it('is the same whether anybody listens or not', () => {
    const turn = (67.31 * Math.PI) / 180;
    for (const exponent of [1, 0.9]) {
      const law = { ...steady, incubation: { ...steady.incubation, exponent } };
      const plan = { law, lattice: { along: 12e-6, across: 14e-6, pulses: 1 }, turn };
      const heard: number[] = [];
      const maps = layerMaps(beam, plan);
      const engraved = engrave(beam, plan, { layers: 900, depth: 0, most: 1e4 }, undefined, maps);
      const silent = engravedFloor(maps, engraved, 900, turn, patch);
      const told = engravedFloor(maps, engraved, 900, turn, patch, (part) => heard.push(part));
      expect(told).toEqual(silent);
      expect(heard.at(-1)).toBe(1);
      expect(heard.every((part, i) => i === 0 || part >= heard[i - 1]!)).toBe(true);
    }
  });
});
