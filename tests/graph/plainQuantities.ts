import { choice, number, picked } from '../../lib/graph/define.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';

/** Words of a derived quantity whose words do not matter. */
export const plainWords = { symbol: 's', unit: '1', about: '', formula: 'x', source: 'definition' } as const;

/** A number input from 0 to 1000 that starts at 1. */
export function plainNumber(id: string) {
  return number({
    id,
    name: id.slice(id.indexOf('.') + 1),
    symbol: 'x',
    unit: '1',
    about: '',
    initial: 1,
    range: { min: 0, max: 1e3 },
  });
}

/** `used` is `typed`, or `measured` where the choice `by` says so. */
export function plainPick(typed: Quantity<number>, measured: Quantity<number>) {
  const by = choice({
    id: 'test.by',
    name: 'by',
    symbol: 'b',
    about: '',
    initial: 'typed',
    options: { typed: 'typed', measured: 'measured' },
  });
  const words = { symbol: 'u', unit: '1', about: '', formula: 'x' } as const;
  const used = picked({ ...words, id: 'test.used', name: 'used', by, cases: { typed, measured } });
  return { by, used };
}
