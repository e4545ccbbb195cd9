import { errorFunction } from '../numerics/complexErrorFunction.ts';
import { panelledRule } from '../numerics/gaussLegendre.ts';
import { backFactor, type HeatInput } from './heatPulse.ts';

/** A field that takes heat evenly for a while; SI. */
export interface EvenField {
  readonly width: number;
  readonly height: number;
  /** s. */
  readonly time: number;
  /** Mean heat per time, W. */
  readonly power: number;
}

/** Conductor of heat, with its thickness where it has one. */
type Conductor = Pick<HeatInput, 'diffusivity' | 'heatCapacity' | 'thickness'>;

/** Ends of the panels in √t, as parts of the whole: the youngest heat has not yet left the field. */
const edges = [0, ...Array.from({ length: 24 }, (_, i) => 2 ** (i - 23))];
const rule = panelledRule(edges, 8);

/**
 * Rise in the middle of a field that has taken heat evenly for its whole time, K: of a half-space without losses, or of a
 * wide plate insulated behind where `thickness` is given. No spot and no line stands out. To 1e-9.
 */
export function evenFieldRise(conductor: Conductor, { width, height, time, power }: EvenField): number {
  const { diffusivity, heatCapacity, thickness = Number.POSITIVE_INFINITY } = conductor;
  const covered = (size: number, reach: number) => (reach === 0 ? 1 : errorFunction(size / (4 * reach)));
  let sum = 0;
  for (let k = 0; k < rule.nodes.length; k++) {
    const spread = diffusivity * time * rule.nodes[k]! ** 2;
    const reach = Math.sqrt(spread);
    sum += rule.weights[k]! * covered(width, reach) * covered(height, reach) * backFactor(thickness, spread);
  }
  const flow = power / (width * height);
  return (2 * flow * Math.sqrt(time) * sum) / (heatCapacity * Math.sqrt(Math.PI * diffusivity));
}

/** Rise, K, where all heat of a field stays in the thickness below it: nothing flows aside, nothing is lost. */
export function warmThroughRise(
  { heatCapacity }: Conductor,
  thickness: number,
  { width, height, time, power }: EvenField,
): number {
  return (power * time) / (heatCapacity * thickness * width * height);
}
