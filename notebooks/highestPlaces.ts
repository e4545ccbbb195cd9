import { formatReadable } from '../lib/graph/units.ts';

/** Heights nearer than this part count as equal, and a hollow shallower than it as none: numbers of a map differ by it from plane to plane. */
const alike = 0.005;

/**
 * Where along z (metres, equally spaced over `extent`) a curve is highest, in words; and where a second peak is as high, if
 * one stands apart. A plateau has one place, its highest.
 */
export function highestPlaces(
  along: Float64Array,
  { low, high }: { readonly low: number; readonly high: number },
): string {
  const z = (i: number) => low + ((high - low) * i) / (along.length - 1);
  return highestIndices(along)
    .map((i) => formatReadable(z(i), 'm', 'mm', 2))
    .join(' and ');
}

/** Index of the highest value; and, ascending, of a second one as high, if a lower saddle lies between. */
export function highestIndices(along: Float64Array): number[] {
  const first = highestOf(along, along.keys());
  const saddles = lowestFrom(along, first);
  const apart = [...along.keys()].filter((i) => saddles[i]! < along[i]! * (1 - alike));
  const second = apart.length === 0 ? first : highestOf(along, apart);
  const asHigh = second !== first && along[second]! >= along[first]! * (1 - alike);
  return asHigh ? [first, second].sort((a, b) => a - b) : [first];
}

function highestOf(along: Float64Array, places: Iterable<number>): number {
  return [...places].reduce((most, i) => (along[i]! > along[most]! ? i : most));
}

/** For each place the lowest value between it and `from`, both among them. */
function lowestFrom(along: Float64Array, from: number): Float64Array {
  const lowest = along.slice();
  for (let i = from + 1; i < along.length; i++) lowest[i] = Math.min(lowest[i - 1]!, along[i]!);
  for (let i = from - 1; i >= 0; i--) lowest[i] = Math.min(lowest[i + 1]!, along[i]!);
  return lowest;
}
