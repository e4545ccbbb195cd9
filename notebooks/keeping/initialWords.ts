import { designGraph } from '../../lib/design/design.ts';
import { type InputQuantity, isInput } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { Patch } from '../../lib/graph/state.ts';
import { inputCounts, pathElements } from '../beamPathInputs.ts';

/** More values than these are counted. */
const mostValues = 3;

/**
 * What is said of values that an opened design leaves out: what they are taken as, those that count first, along the beam.
 * Empty where it gives all. Files and lists that are not there are none, which replaces nothing.
 */
export function initialWords(given: Patch): string {
  const inputs = { ...designGraph.initial, ...given };
  const missing = inOrder().filter(
    ({ id, kind }) => (kind === 'number' || kind === 'choice') && !Object.hasOwn(given, id),
  );
  if (missing.length === 0) return '';
  const counting = missing.filter(({ id }) => inputCounts(id, inputs));
  const ordered = [...new Set([...counting, ...missing])];
  const named = ordered
    .slice(0, mostValues)
    .map((input) => `${input.name} ${shownValue(input, { value: designGraph.initial[input.id] })}`);
  const more = missing.length > mostValues ? [`and ${missing.length - mostValues} more`] : [];
  const values =
    missing.length === 1 ? 'a value, which is taken' : `${missing.length} values, which are taken`;
  return `It leaves out ${values} as at first: ${[...named, ...more].join(', ')}.`;
}

/** Inputs along the beam, then the others by id. */
function inOrder(): InputQuantity[] {
  const alongBeam = Object.values(pathElements).flatMap((one): readonly InputQuantity[] => one.inputs);
  const all = [...designGraph.quantities.values()].filter(isInput).sort((a, b) => (a.id < b.id ? -1 : 1));
  return [...new Set([...alongBeam, ...all])];
}
