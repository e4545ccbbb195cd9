import type { Quantity } from '../lib/graph/quantity.ts';
import type { Block } from './document.ts';
import { type Prose, slotQuantities } from './prose.ts';

const inProse = ({ slots }: Prose): Quantity[] => slots.flatMap(slotQuantities);

/** Quantities whose values a block shows; inputs side by side show none but their own. */
export function blockQuantities(block: Block): readonly Quantity[] {
  switch (block.kind) {
    case 'prose':
    case 'caution':
      return inProse(block.prose);
    case 'figure':
    case 'figures':
    case 'choices':
    case 'rows':
      return Object.values(block.from);
    case 'table':
      return block.table.rows.flatMap((row) => row.filter((cell) => typeof cell !== 'string')) as Quantity[];
    case 'question':
      return [...inProse(block.question), ...Object.values(block.from), ...inProse(block.explanation)];
    case 'controls':
    case 'picture':
    case 'tool':
      return [];
  }
}
