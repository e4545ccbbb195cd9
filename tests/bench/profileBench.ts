import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { irradianceOfCrossedStep } from '../../lib/optics/crossedStep.ts';
import { type Row, timeRuns } from './timing.ts';

/** One profile on the workpiece of the default design, in an engine that keeps what it can and in a new one. */
export function benchProfile(): Row[] {
  const engine = createEngine(designGraph);
  const profileFor = (used: typeof engine, diameter: number) => {
    used.setInputs({ ...designGraph.initial, 'laser.beamDiameter': diameter });
    if (!hasValue(used.evaluate(['spot.profile'])['spot.profile']!)) throw new Error('no profile');
  };
  const diameter = (i: number) => 5e-3 * (1 + 1e-4 * (i + 100));
  return [
    {
      what: 'one profile, beam diameter changed',
      times: timeRuns((i) => profileFor(engine, diameter(i)), 200, 50),
    },
    {
      what: 'one profile from scratch, Bessel matrix included',
      times: timeRuns((i) => profileFor(createEngine(designGraph), diameter(i)), 100, 20),
    },
    crossedStepRow(),
  ];
}

/** A square spot, which has no worker: fifty milliseconds is what a figure that follows the hand allows. */
function crossedStepRow(): Row {
  const plate = { kind: 'island', halfWidthX: 1, halfWidthY: 1, phase: 3, stopX: 1.5, stopY: 1.5 } as const;
  const axis = Float64Array.from({ length: 512 }, (_, i) => (i - 256) * 0.02);
  return {
    what: 'spot behind an isolated rectangle, 512 × 512',
    times: timeRuns(() => irradianceOfCrossedStep(plate, 0.3, axis, axis), 20, 5),
  };
}
