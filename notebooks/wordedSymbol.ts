import type { Quantity } from '../lib/graph/quantity.ts';

/** True where the symbol is words already, so that it would say the name twice. */
export function isWorded(quantity: Quantity): boolean {
  return ['choice', 'file', 'list'].includes(quantity.kind) || /^\\text\{[^{}]*\}$/.test(quantity.symbol);
}
