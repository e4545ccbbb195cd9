import { orderOf } from './graph.ts';
import { type Derived, isInput, type Quantity } from './quantity.ts';

/**
 * Quantities that can enter a value under these inputs: all that it is derived from, but of a picked one the choice and
 * the case chosen, whatever happens to the others.
 */
export function enteringOf(
  { from, picks }: Derived,
  inputs: Readonly<Record<string, unknown>>,
): readonly Quantity[] {
  const choice = from['choice'];
  const chosen = picks && choice?.kind === 'choice' ? from[inputs[choice.id] as string] : undefined;
  return choice && chosen ? [choice, chosen] : Object.values(from);
}

/** Inputs that can enter a value under these inputs, through whatever lies between; cases not chosen do not count. */
export function enteringInputsOf(
  quantity: Quantity,
  inputs: Readonly<Record<string, unknown>>,
): readonly string[] {
  const entering = orderOf([quantity], (derived) => enteringOf(derived, inputs));
  return entering.filter(isInput).map(({ id }) => id);
}
