import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Light } from '../../lib/optics/light.ts';
import { spotAt } from '../../lib/optics/spot.ts';
import { designs } from '../designs/make.ts';

/** The true values behind the invented spots of the rain-gauge funnel, SI units, and what was added to them. */
export const marksTruth = {
  /** Threshold fluence of one pulse, incident. */
  threshold: 2100,
  z: 0,
  /** Scatter of each diameter and of the pulse energy, as a part of it. */
  diameterScatter: 0.02,
  energyScatter: 0.01,
  /** The outlier: its line in the table, and how much too large both diameters are. */
  outlierRow: 18,
  outlierFactor: 1.3,
};

/** Pulse energies in µJ, in the order the spots were fired; three of them three times. */
const energies = [
  2.6, 2.9, 3.4, 3.8, 4.5, 5.5, 5.5, 5.5, 7, 9, 12, 12, 12, 14, 16, 18, 20, 24, 24, 24, 32, 40,
];

/** The light of the rain-gauge funnel, and the fluence of relative irradiance 1 a joule. */
function rainGauge(): { light: Light; unit: number } {
  const { inputs } = applyPatch(
    designGraph,
    initialState(designGraph),
    designs['rain-gauge-funnel.json']!.patch,
  );
  const outcomes = createEngine(designGraph, inputs).evaluate([
    'focus.light',
    'focus.unshapedPeakFluence',
    'laser.usedPulseEnergy',
  ]);
  const value = <T>(id: string) => valueOrThrow<T>(outcomes[id] as never);
  return {
    light: value('focus.light'),
    unit: value<number>('focus.unshapedPeakFluence') / value<number>('laser.usedPulseEnergy'),
  };
}

/** Rows of energy in µJ, diameters along x and y in µm, z in mm and a remark. */
export function drawMarks(): string[][] {
  const { light, unit } = rainGauge();
  const { threshold, z, diameterScatter, energyScatter, outlierRow, outlierFactor } = marksTruth;
  const spot = spotAt(light, z);
  const random = createRandom(81);
  return energies.map((energy, i) => {
    const fired = energy * 1e-6 * (1 + energyScatter * random.normal());
    const level = threshold / (fired * unit);
    const area = level < spot.peak ? spot.areaAbove(level) : 0;
    const factor = i + 2 === outlierRow ? outlierFactor : 1;
    const diameter = () => 2e6 * Math.sqrt(area / Math.PI) * factor * (1 + diameterScatter * random.normal());
    const remark = area === 0 ? 'no mark seen' : factor > 1 ? 'dust?' : '';
    return [
      energy.toFixed(1),
      diameter().toFixed(1),
      diameter().toFixed(1),
      '1',
      (1e3 * z).toFixed(2),
      remark,
    ];
  });
}
