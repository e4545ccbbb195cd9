import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import type { EqualGroove, EqualGrooves } from '../../lib/design/grooveEqual.ts';
import { scaled } from '../../lib/design/grooveEqual.ts';
import { focusOf, plainOf } from '../../lib/design/grooveLight.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { defocusAt, type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import type { PulseTrain } from '../../lib/process/chordRemoval.ts';
import { type GrooveShape, shapeOf } from '../../lib/process/grooveShape.ts';
import { expectClose } from '../close.ts';
import { grooveByPulses } from '../process/grooveByPulses.ts';

const initial = initialState(designGraph);
const engineOf = (patch: Patch) => createEngine(designGraph, applyPatch(designGraph, initial, patch).inputs);
const keys = ['topWidth', 'meanDepth', 'wallAngle', 'centreToMeanDepth'] as const;

/** The groove of a row, pulse by pulse, on a coarse and on a fine grid. */
function byPulses(light: Light, z: number, row: EqualGroove, train: Omit<PulseTrain, 'unit'>) {
  const spot = spotAt(light, z);
  const shape = (rows: number, parts: number) => {
    const { y, passes } = grooveByPulses({
      spotAtDepth: (depth) => spotAt(light, z + depth),
      planes: 4e-6,
      unit: row.peakFluence / spot.peak,
      law: train.law,
      pulseSpacing: train.pulseSpacing,
      passes: row.passes,
      half: 1.6 * row.shape.topWidth,
      rows,
      direction: 0,
      shifts: 1,
      parts,
    });
    return shapeOf({ y, depth: passes.at(-1)! })!;
  };
  return [shape(101, 4), shape(201, 8)] as const;
}

describe.each(Object.entries(designs))('grooves of equal width and mean depth: %s', (_, { patch }) => {
  const outcomes = engineOf(patch).evaluate([
    'groove.equal',
    'groove.pulses',
    'focus.light',
    'groove.firstPlane',
    'groove.secondPlane',
  ]);
  const value = <T>(id: string) => (outcomes[id] as { value: T }).value;
  const equal = value<EqualGrooves>('groove.equal');
  const light = value<Light>('focus.light');
  const train = value<Omit<PulseTrain, 'unit'>>('groove.pulses');
  const plain = plainOf(light);
  const place = (one: Light, z: number, scale: number) => {
    const other = scaled(one, scale);
    return [other, planeOfDefocus(other, defocusAt(one, z))] as const;
  };
  const rows = {
    first: [light, value<number>('groove.firstPlane')],
    second: [light, value<number>('groove.secondPlane')],
    plain: [plain, focusOf(plain)],
  } as const;

  it.each(['first', 'second', 'plain'] as const)('%s: every pulse one by one on a finer grid', (name) => {
    const row = equal[name]!;
    const [one, z] = rows[name];
    const [rough, exact] = byPulses(...place(one, z, row.scale), row, train);
    for (const key of keys) {
      // Half the step across and within a pass changes it by about the error left; 5e-3 for the coarser grid of the search.
      const error = 1.5 * Math.abs(rough[key] - exact[key]) + 5e-3 * exact[key];
      expect(error, key).toBeLessThan(0.06 * exact[key]);
      expectClose(row.shape[key], exact[key], { absolute: error, source: `every pulse one by one, ${key}` });
    }
  });

  it('have equal widths and mean depths', () => {
    const wanted: GrooveShape = equal.first.shape;
    for (const row of [equal.second!, equal.plain!]) {
      expectClose(row.shape.topWidth, wanted.topWidth, { relative: 1e-3, source: 'what was asked' });
      expectClose(row.shape.meanDepth, wanted.meanDepth, { relative: 1e-3, source: 'what was asked' });
    }
  });

  it('the plain beam is the one with the deepest middle', () => {
    expect(equal.plain!.shape.centreToMeanDepth).toBeGreaterThan(equal.first.shape.centreToMeanDepth);
    expect(equal.plain!.shape.centreToMeanDepth).toBeGreaterThan(equal.second!.shape.centreToMeanDepth);
  });
});
