import { designGraph } from '../../lib/design/design.ts';
import { magnification } from '../../lib/design/expander.ts';
import { rayleighLength } from '../../lib/design/focus.ts';
import { beamDiameter } from '../../lib/design/laser.ts';
import { focalLength } from '../../lib/design/lens.ts';
import { stepRatio } from '../../lib/design/match.ts';
import { peakFluence, width } from '../../lib/design/spot.ts';
import type { NumberInput, Quantity } from '../../lib/graph/quantity.ts';
import { type VariedInput, valuesBetween, vary } from '../../lib/studies/vary.ts';
import { percentile, type Row, timeRuns } from './timing.ts';

/** Places along each of the two inputs. */
const count = 60;
const aim = 200;

const between = ({ id }: NumberInput, from: number, to: number): VariedInput => ({
  id,
  values: valuesBetween(from, to, count, 'steps'),
});
const magnifications = between(magnification, 1.5, 2.6);
const sweeps: readonly (readonly VariedInput[])[] = [
  [magnifications, between(focalLength, 0.06, 0.2)],
  [between(beamDiameter, 0.003, 0.008), magnifications],
];
const light: readonly Quantity[] = [stepRatio, rayleighLength, width, peakFluence];

/** Light quantities over two inputs, 60 × 60 places each; a new engine each time, as for a new question. */
export function benchVary(): Row[] {
  return sweeps.flatMap((over) => light.map((quantity) => rowOf(quantity, over)));
}

function rowOf({ id, name }: Quantity, over: readonly VariedInput[]): Row {
  const times = timeRuns(() => vary(designGraph, designGraph.initial, over, [id]), 20, 4);
  const names = over.map((one) => designGraph.quantities.get(one.id)!.name).join(' and ');
  return {
    what: `${name} over ${names}, ${count} × ${count} places`,
    times,
    remark: percentile(times, 0.95) <= aim ? `within ${aim} ms` : `above ${aim} ms`,
  };
}
