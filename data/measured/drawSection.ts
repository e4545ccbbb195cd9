import { designGraph } from '../../lib/design/design.ts';
import { grooveModel } from '../../lib/design/sectionFit.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState } from '../../lib/graph/state.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import type { Light } from '../../lib/optics/light.ts';
import type { PulseTrain } from '../../lib/process/chordRemoval.ts';
import { depthAt } from '../../lib/process/grooveShape.ts';
import { designs } from '../designs/make.ts';

/** The true values behind the invented cross-section of the cold-plate channels, SI units, and what was added to them. */
export const sectionTruth = {
  passes: 5,
  depthPerPulse: 16e-9,
  /** Threshold of one pulse, incident. */
  threshold: 4100,
  /** Middle of the groove in the positions of the table. */
  centre: 31.3e-6,
  tilt: 0.012,
  /** Scatter of the heights, and how alike neighbours are. */
  noise: 60e-9,
  alike: 0.6,
  /** Height and width of the rim, and where it stands beyond the edge. */
  rim: { height: 0.7e-6, width: 0.7e-6, beyond: 0.8e-6 },
  /** Every so many points of a wall are missing. */
  lost: 7,
};

const length = 60e-6;
const count = 301;

/** What the table's header says. */
export const sectionHeader = '# invented; groove of the cold-plate channels after 5 passes\nx (µm),z (µm)';

/** Rows of position and height in µm; *** where a wall gave no height. */
export function drawSection(seed: number): [string, string][] {
  const { passes, depthPerPulse, threshold, centre, tilt, noise, alike, rim, lost } = sectionTruth;
  const { inputs } = applyPatch(
    designGraph,
    initialState(designGraph),
    designs['cold-plate-channels.json']!.patch,
  );
  const ids = ['focus.light', 'workpiece.z', 'focus.unshapedPeakFluence', 'groove.pulses'];
  const outcomes = createEngine(designGraph, inputs).evaluate(ids);
  const [light, z, unit, train] = ids.map((id) => valueOrThrow(outcomes[id] as never)) as unknown as [
    Light,
    number,
    number,
    PulseTrain,
  ];
  const groove = grooveModel(light, z, { ...train, unit }, passes)(depthPerPulse, threshold);
  const edge = groove.y.findLast((_, i) => groove.depth[i]! > 0.02e-6)!;
  const random = createRandom(seed);
  let error = random.normal();
  return Array.from({ length: count }, (_, i) => {
    const x = (length * i) / (count - 1);
    const y = x - centre;
    const depth = depthAt(groove, y);
    const raised = rim.height * Math.exp(-(((Math.abs(y) - edge - rim.beyond) / rim.width) ** 2));
    error = alike * error + Math.sqrt(1 - alike ** 2) * random.normal();
    const height = 2.4e-6 + tilt * x - depth + (depth > 0.02e-6 ? 0 : raised) + noise * error;
    const gone = depth > 1e-6 && i % lost === 0;
    return [(1e6 * x).toFixed(1), gone ? '***' : (1e6 * height).toFixed(3)];
  });
}
