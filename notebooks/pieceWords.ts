import type { Graph } from '../lib/graph/graph.ts';
import type { OwnBlock } from '../lib/graph/studies.ts';
import { blockChoices, shortened } from './blockChoices.ts';
import type { StepwellDocument } from './document.ts';
import { listed } from './shortTexts.ts';

/** What a piece is, in a few words, for lists of pieces. */
export function pieceWords(graph: Graph, documents: readonly StepwellDocument[], piece: OwnBlock): string {
  const named = (ids: readonly string[]) => listed(ids.map((id) => graph.quantities.get(id)?.name ?? id));
  switch (piece.kind) {
    case 'text': {
      const words = textWords(piece.text);
      return words === '' ? 'Text' : `Text: ${words}`;
    }
    case 'block': {
      const document = documents.find((one) => one.id === piece.document);
      const choice = document && blockChoices(document).find(({ id }) => id === piece.block);
      const words = choice?.label ?? `‘${piece.block.slice(0, 40)}’`;
      return piece.title ?? `${words}, from ‘${document?.title ?? piece.document}’`;
    }
    case 'values':
      return piece.title ?? `Values: ${named(piece.ids)}`;
    case 'controls':
      return piece.title ?? `Inputs: ${named(piece.ids)}`;
    case 'equation':
      return piece.title ?? `Formula: ${named([piece.id])}`;
    case 'chart':
      return piece.title ?? `Chart: ${named(piece.ids)} over ${named([piece.over.id])}`;
  }
}

/** The first heading of a text, or its first words. */
function textWords(text: string): string {
  const heading = /^ {0,3}#{1,6}\s+(.+)$/m.exec(text)?.[1];
  return shortened((heading ?? text).replace(/[#*_`>$]/g, ''));
}
