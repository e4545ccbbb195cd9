import { designGraph } from '../../lib/design/design.ts';
import type { PlannedLadder } from '../../lib/design/ladder.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { withPhaseScaled } from '../../lib/optics/variants.ts';
import { designs } from '../designs/make.ts';

/** The true values behind the invented ladders of the rain-gauge funnel, SI units, and what was added to them. */
export const ladderTruth = {
  /** Reading of z in the focus; readings grow towards the lens. */
  zero: 12.137e-3,
  direction: -1,
  /** Where the focus was expected. */
  expected: 12e-3,
  /** Threshold fluence of one pulse, incident. */
  threshold: 2100,
  /** Scatter of each diameter and of the pulse energy, as a part of it, and error of reading a diameter. */
  diameterScatter: 0.02,
  energyScatter: 0.01,
  reading: 0.2e-6,
};

/** The funnel's own plate, whose two sides are alike, and one of nine tenths of its step, whose sides differ. */
export const ladderDesigns: Readonly<Record<'own' | 'thin', Patch>> = {
  own: designs['rain-gauge-funnel.json']!.patch,
  thin: { ...designs['rain-gauge-funnel.json']!.patch, 'plate.designPhase': 0.9 * Math.PI },
};

/** Rows of plate, energy in µJ, z in mm and diameters along x and y in µm, as planned and then fired and measured. */
export function drawLadder(plate: 'own' | 'thin', seed: number): string[][] {
  const patch = { ...ladderDesigns[plate], 'ladder.expectedReading': ladderTruth.expected };
  const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);
  const outcomes = createEngine(designGraph, inputs).evaluate(['ladder.plan', 'focus.light']);
  const plan = valueOrThrow<PlannedLadder>(outcomes['ladder.plan'] as never);
  const light = valueOrThrow<Light>(outcomes['focus.light'] as never);
  const { zero, direction, threshold, diameterScatter, energyScatter, reading } = ladderTruth;
  const random = createRandom(seed);
  return plan.marks.map(({ plate: isIn, energy, reading: z }) => {
    const fired = energy * (1 + energyScatter * random.normal());
    const { fluencePerEnergy } = isIn ? plan.shaped : plan.unshaped;
    const spot = spotAt(isIn ? light : withPhaseScaled(light, 0), direction * (z - zero));
    const area = spot.areaAbove(threshold / (fired * fluencePerEnergy));
    const diameter = () => {
      const exact = 2 * Math.sqrt(area / Math.PI);
      return area === 0 ? 0 : exact * (1 + diameterScatter * random.normal()) + reading * random.normal();
    };
    return [
      isIn ? '1' : '0',
      (1e6 * energy).toFixed(2),
      (1e3 * z).toFixed(3),
      ...[diameter(), diameter()].map((d) => (1e6 * Math.max(0, d)).toFixed(1)),
    ];
  });
}
