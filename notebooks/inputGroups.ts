import { designGraph } from '../lib/design/design.ts';
import { type InputQuantity, isInput } from '../lib/graph/quantity.ts';
import { inputCounts, type PathElement, pathElements } from './beamPathInputs.ts';

/** Inputs of the design by element of the beam path, under its heading. */
export interface InputGroup {
  readonly heading: string;
  readonly inputs: readonly InputQuantity[];
}

/** The inputs that count, by element of the beam path; inputs of no element come last. */
export function inputGroups(inputs: Readonly<Record<string, unknown>>): InputGroup[] {
  const elements: readonly PathElement[] = Object.values(pathElements);
  const known = new Set<InputQuantity>(elements.flatMap(({ inputs: list }) => list));
  const others = designGraph.order.filter(isInput).filter((input) => !known.has(input));
  const groups = [...elements, { heading: 'Besides', inputs: others }];
  return groups
    .map(({ heading, inputs: list }) => ({
      heading,
      inputs: list.filter(({ id }) => inputCounts(id, inputs)),
    }))
    .filter(({ inputs: list }) => list.length > 0);
}
