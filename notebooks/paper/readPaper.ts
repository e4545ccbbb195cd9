import type { PaperBlock, Run } from './paper.ts';

/** All runs of the blocks, in order. */
export function runsIn(blocks: readonly PaperBlock[]): Run[] {
  return blocks.flatMap(runsOf);
}

function runsOf(block: PaperBlock): readonly Run[] {
  switch (block.kind) {
    case 'paragraph':
      return block.runs;
    case 'list':
      return block.items.flat();
    case 'table':
      return block.rows.flat(2);
    case 'heading':
    case 'figure':
    case 'equation':
      return [];
  }
}

/** Ids of the quantities whose values are shown, each once, in order. */
export function shownIn(blocks: readonly PaperBlock[]): string[] {
  const ids = runsIn(blocks).flatMap((run) =>
    'text' in run && run.quantity !== undefined ? [run.quantity] : [],
  );
  return [...new Set(ids)];
}

/** Keys of the bibliography that are cited, each once, in order. */
export function citedIn(blocks: readonly PaperBlock[]): string[] {
  return [...new Set(runsIn(blocks).flatMap((run) => ('cite' in run ? [run.cite] : [])))];
}

/** The blocks with an id of its own for each figure; one that stands there already is left out. */
export function uniqueFigures(blocks: readonly PaperBlock[]): PaperBlock[] {
  const captions = new Set<string>();
  const ids = new Set<string>();
  return blocks.flatMap((block): PaperBlock[] => {
    if (block.kind !== 'figure') return [block];
    if (captions.has(block.caption)) return [];
    captions.add(block.caption);
    let id = block.id;
    for (let i = 2; ids.has(id); i++) id = `${block.id}-${i}`;
    ids.add(id);
    return [{ ...block, id }];
  });
}
