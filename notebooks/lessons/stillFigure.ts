import type { FigureBlock } from '../document.ts';

/** A chart of a document with nothing on it to be moved, and a summary that leaves the reading to the person. */
export function stillFigure(block: FigureBlock, summary: string): FigureBlock {
  return {
    ...block,
    view: (values) => {
      const { moves: _, hint: __, marks: ___, ...spec } = block.view(values);
      return { ...spec, summary };
    },
  };
}
