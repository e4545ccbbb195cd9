import type { ValuesOf } from '../lib/graph/quantity.ts';
import type { RowsBlock } from './document.ts';
import type { From } from './prose.ts';
import type { RowsSpec } from './rowsSpec.ts';

/** A list of rows to leave out, with its values inferred. */
export function rows<const F extends From>(
  definition: Omit<RowsBlock, 'kind' | 'from' | 'view'> & {
    from: F;
    view: (values: ValuesOf<F>) => RowsSpec;
  },
): RowsBlock {
  return { kind: 'rows', ...definition } as unknown as RowsBlock;
}
