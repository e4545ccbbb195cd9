import type { Graph } from '../../lib/graph/graph.ts';
import { isInput, type Quantity } from '../../lib/graph/quantity.ts';
import type { Studies } from '../../lib/graph/studies.ts';

/** Ids of the numbers by which designs are told apart. */
const ids: readonly string[] = [
  'plate.beamDiameter',
  'match.stepRatio',
  'match.stopRatio',
  'focus.defocus',
  'spot.kind',
  'spot.width',
  'spot.dip',
  'spot.edgeWidth',
  'spot.peakFluence',
  'spot.depthOfFocus',
  'threshold.fluenceAtN',
  'spot.markDiameter',
  'laser.averagePower',
  'scan.pulseSpacing',
  'scan.modulation',
  'scan.accumulatedFluence',
  'scan.fieldTime',
  'heat.rise',
  'safety.plateOutFactor',
];

/** The numbers by which designs are told apart: the usual ones, those that something is required of, and the person's own. */
export function keyNumbers({
  graph,
  studies,
}: {
  readonly graph: Graph;
  readonly studies: Studies;
}): Quantity[] {
  const required = studies.requirements.map(({ id }) => id);
  const own = studies.ownLines.map(({ id }) => id);
  return [...new Set([...ids, ...required, ...own])]
    .map((id) => graph.quantities.get(id))
    .filter((quantity) => quantity !== undefined && !isInput(quantity)) as Quantity[];
}
