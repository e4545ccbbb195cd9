import type { PaperBlock } from './paper.ts';

/** A block, and the number of its caption where it has one: tables and figures count apart. */
export interface NumberedBlock {
  readonly block: PaperBlock;
  readonly number: number;
}

/** Blocks with the numbers of their captions, from 1; 0 for what has none. */
export function numberBlocks(blocks: readonly PaperBlock[]): NumberedBlock[] {
  const counts = { figure: 0, table: 0 };
  return blocks.map((block) => {
    const counted = block.kind === 'figure' || block.kind === 'table';
    return { block, number: counted ? ++counts[block.kind] : 0 };
  });
}
