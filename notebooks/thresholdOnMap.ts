import type { FamilyMap } from '../lib/design/familyMap.ts';
import { formatReadable } from '../lib/graph/units.ts';
import { levelLines } from '../lib/numerics/levelLines.ts';
import { micro } from './columns.ts';
import type { SeriesSpec } from './document.ts';

/** Columns and rows of the map that the line follows: every fourth is fine enough for its smooth profiles, 7 px of the chart apart. */
const stride = 4;

/** The line last drawn on a map: it stays while the workpiece moves along. */
const kept = new WeakMap<Float64Array, { readonly level: number; readonly series: SeriesSpec }>();

/** Where the fluence through the focus equals the threshold, on both sides of the axis; z in mm, radius in µm. */
export function thresholdSeries(map: FamilyMap, level: number): SeriesSpec {
  const known = kept.get(map.values);
  if (known?.level === level) return known.series;
  const series = drawnLine(map, level);
  kept.set(map.values, { level, series });
  return series;
}

function drawnLine(map: FamilyMap, level: number): SeriesSpec {
  const { x, y } = levelLines(map, level, stride);
  const { low, high, radius } = map.extent;
  const count = x.length;
  const z = new Float64Array(2 * count);
  const r = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    z[i] = z[count + i] = 1e3 * (low + ((high - low) * x[i]!) / (map.columns - 1));
    r[i] = (micro * radius * y[i]!) / (map.rows - 1);
    r[count + i] = -r[i]!;
  }
  return { label: 'threshold for the pulses on a place', role: 'second', x: z, y: r };
}

/** In which planes of the map something is marked. */
export function thresholdOnMapSaid(
  { extent, highestByPlane }: FamilyMap,
  level: number,
  unit: number,
): string {
  const threshold = formatReadable(level * unit, 'J/m^2', 'J/cm^2', 3);
  const marked = highestByPlane.map((highest) => (highest > level ? 1 : 0));
  const [first, last] = [marked.indexOf(1), marked.lastIndexOf(1)];
  if (first < 0) return ` Nowhere is the fluence above the threshold of ${threshold}.`;
  const z = (i: number) =>
    formatReadable(extent.low + ((extent.high - extent.low) * i) / (marked.length - 1), 'm', 'mm', 3);
  const everywhere = first === 0 && last === marked.length - 1 && !marked.includes(0);
  if (everywhere) return ` Every plane shown has fluence above the threshold of ${threshold}.`;
  const broken = marked.subarray(first, last + 1).includes(0) ? ', with gaps between' : '';
  return ` Fluence above the threshold of ${threshold} is found from z = ${z(first)} to ${z(last)}${broken}.`;
}
