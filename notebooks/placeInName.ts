import { measuredProfileZ } from '../lib/design/measuredSpot.ts';
import { fromUnit } from '../lib/graph/units.ts';

/** z in a file name, in metres: "z=0.05mm", "z_-50um", "z 0,2 mm"; undefined where there is none that can be. */
export function placeInName(name: string): number | undefined {
  const found = /(?<![a-z])z[\s_=]*([+\-\u2212]?\d+(?:[.,]\d+)?)[\s_]*(mm|[uµμ]m)(?![a-z])/i.exec(name);
  if (!found) return undefined;
  const number = Number(found[1]!.replace(',', '.').replace('\u2212', '-'));
  const z = fromUnit(number, 'm', found[2]!.toLowerCase() === 'mm' ? 'mm' : 'um');
  const { min, max } = measuredProfileZ.range;
  return z >= min && z <= max ? z : undefined;
}
