import type { Derived, Quantity } from './quantity.ts';

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
