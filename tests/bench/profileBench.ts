import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
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
  ];
}
