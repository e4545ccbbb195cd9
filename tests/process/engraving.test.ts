import { describe, expect, it } from 'vitest';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { type CuttingLaw, countingLevel } from '../../lib/process/cuttingLaw.ts';
import { depthAfter, engrave, layersUntil } from '../../lib/process/engraving.ts';
import { firstLayer, unevennessOf, widestLines } from '../../lib/process/engravingBest.ts';
import { cellGrid, layerCell } from '../../lib/process/engravingCell.ts';
import type { EngravingBeam } from '../../lib/process/engravingPlanes.ts';
import { fluenceTable } from '../../lib/process/fluenceTable.ts';
import { gaussianVolume } from '../../lib/process/gaussianRemoval.ts';
import { gaussianSpot } from '../../lib/process/gaussianSpot.ts';
import { volumeAtPeak } from '../../lib/process/removal.ts';
import { expectClose } from '../close.ts';
import { crossedStep, roundStep, spotAtDefocus } from './spots.ts';

const radius = 10e-6;
const steady: CuttingLaw = { depth: 20e-9, incubation: { first: 2000, exponent: 1, floor: 0 } };
const removal = [{ depth: 20e-9, threshold: 2000 }];
const gaussian = gaussianSpot(radius);
const gaussianBeam: EngravingBeam = {
  spotAt: () => gaussian,
  plane: 0,
  rayleigh: 300e-6,
  finest: 2 * radius,
  unit: 20e3,
  furthest: 1,
};
const spots: readonly (readonly [name: string, spot: Spot, unit: number, finest: number])[] = [
  ['Gaussian', gaussian, 20e3, 2 * radius],
  ['round step', spotAtDefocus(roundStep(1, 1.4), 0), 80e3, 13e-6],
  ['crossed steps', spotAtDefocus(crossedStep(1.09, 1.5), 0), 80e3, 13e-6],
];
const lattices = [
  [0.1e-6, 6e-6],
  [3e-6, 6e-6],
  [20e-6, 15e-6],
  [60e-6, 60e-6],
] as const;

describe('volume is conserved between one layer and its pulses', () => {
  it.each(spots)('%s', (_, spot, unit, finest) => {
    const table = fluenceTable(spot, unit, countingLevel(steady));
    const volume = volumeAtPeak(spot, removal, unit * spot.peak);
    for (const [along, across] of lattices) {
      const errors = [1, 2, 4].map((fineness) => {
        const grid = cellGrid({ along, across, pulses: 1 }, finest, fineness);
        return (layerCell(table, steady, grid, 0).meanRemoved * along * across) / volume - 1;
      });
      const source = 'volumeAtPeak, by Gauss panels along rays';
      // The grid's error falls with the square of its step, unevenly where edges of craters fall between points.
      expectClose(errors[0]!, 0, { absolute: 5e-4, source });
      expectClose(errors[2]!, 0, { absolute: 5e-5, source });
    }
  });
});

it('lines of Gaussian pulses: passes times the volume of a pulse over its share of the area', () => {
  const plan = { law: steady, lattice: { along: 1e-6, across: 5e-6, pulses: 1 }, turn: 0 };
  const engraved = engrave(gaussianBeam, plan, { layers: 12, depth: 0, most: 100 });
  const volume = gaussianVolume(radius, 20e-9, 10);
  expectClose(depthAfter(engraved, 12), (12 * volume) / (1e-6 * 5e-6), {
    relative: 5e-4,
    source: '(πw²δ/4) ln²(F0/F_th), S. Nolte et al., J. Opt. Soc. Am. B 14, 2716 (1997)',
  });
});

it('layers until a depth are interpolated, and none where it is not reached', () => {
  const engraved = {
    depth: Float64Array.of(0, 2e-6, 3e-6),
    before: Float64Array.of(0, 1, 2),
    end: 'done',
  } as const;
  expectClose(layersUntil(engraved, 2.5e-6)!, 1.5, { absolute: 1e-12 });
  expect(layersUntil(engraved, 3e-6)).toBe(2);
  expect(layersUntil(engraved, 3.1e-6)).toBeUndefined();
  expect(depthAfter(engraved, 7)).toBe(3e-6);
});

describe('pulses counted on a place', () => {
  it.each(spots)('%s: the whole numbers found one by one', (_, spot, unit, finest) => {
    const level = countingLevel(steady);
    const [along, across] = [3e-6, 6e-6];
    const grid = cellGrid({ along, across, pulses: 2 }, finest);
    const { counted } = layerCell(fluenceTable(spot, unit, level), steady, grid, 0);
    // The table's own error, as it states it: pulses whose fluence lies nearer to the level may fall on either side.
    const error = (spot.spectrumForm === 'round' ? 1e-6 : 2e-4) * unit * spot.peak;
    counted.forEach((count, point) => {
      const x = ((point % grid.columns) * along) / grid.columns;
      const y = (Math.floor(point / grid.columns) * across) / grid.rows;
      let [surely, perhaps] = [0, 0];
      for (let j = -12; j <= 12; j++) {
        for (let i = -24; i <= 24; i++) {
          const fluence = unit * spot.irradianceAt(x - i * along, y - j * across);
          if (fluence >= level + error) surely += 2;
          if (fluence >= level - error) perhaps += 2;
        }
      }
      expect(count).toBeGreaterThanOrEqual(surely);
      expect(count).toBeLessThanOrEqual(perhaps);
    });
  });
});

describe('the widest lines', () => {
  const lattice = { along: 1e-6, pulses: 1 };

  it('leave the unevenness allowed, and a little wider ones more', () => {
    const allowed = 0.02;
    const found = widestLines(gaussianBeam, steady, lattice, allowed, 2 * radius)!;
    expect(unevennessOf(found.layer)).toBeLessThanOrEqual(allowed);
    const wider = firstLayer(gaussianBeam, steady, { ...lattice, across: found.across * 1.02 });
    expect(unevennessOf(wider)).toBeGreaterThan(allowed);
  });

  it('are not there where pulses along a line alone leave more', () => {
    const sparse = { along: 3 * radius, pulses: 1 };
    expect(widestLines(gaussianBeam, steady, sparse, 0.02, 2 * radius)).toBeUndefined();
  });
});
