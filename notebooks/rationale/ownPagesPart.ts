import type { Graph } from '../../lib/graph/graph.ts';
import type { Studies } from '../../lib/graph/studies.ts';
import { documents } from '../contents.ts';
import type { Block } from '../document.ts';
import { type OwnContent, ownContents } from '../ownBlocks.ts';
import type { PaperBlock } from '../paper/paper.ts';
import { writtenBlock } from '../paper/writtenBlock.ts';
import type { ToldDesign } from './told.ts';

/** What the pieces of each page of the person's own come to. */
function pagesOf(
  graph: Graph,
  { ownDocuments }: Studies,
): { title: string; contents: readonly OwnContent[] }[] {
  return ownDocuments.map(({ id, title, blocks }) => ({
    title,
    contents: ownContents(graph, documents, blocks, (_, place) => `${id}-${place}`),
  }));
}

/** Blocks of documents that stand on the person's own pages. */
export function ownPageBlocks(graph: Graph, studies: Studies): Block[] {
  return pagesOf(graph, studies).flatMap(({ contents }) =>
    contents.flatMap((content) => (content.kind === 'block' ? [content.block] : [])),
  );
}

/** The person's own pages, one part each; a chart that is worked out on its page alone is named. */
export function ownPagesPart(told: ToldDesign): PaperBlock[] {
  return pagesOf(told.graph, told.studies).flatMap(({ title, contents }): PaperBlock[] => [
    { kind: 'heading', level: 1, text: title.trim() === '' ? 'A page of the author’s own' : title },
    ...contents.flatMap((content) => contentBlocks(content, told)),
  ]);
}

function contentBlocks(content: OwnContent, told: ToldDesign): PaperBlock[] {
  if (content.kind === 'problem') return [note(content.message)];
  const heading: PaperBlock[] = content.heading ? [{ kind: 'heading', level: 3, text: content.heading }] : [];
  const caption: PaperBlock[] = content.caption
    ? [{ kind: 'paragraph', runs: [{ text: content.caption }] }]
    : [];
  const written =
    content.kind === 'block'
      ? writtenBlock(content.block, told, { headings: 2 })
      : [note('A chart that varies the design stands here on the page; it is no part of this paper.')];
  return [...heading, ...written, ...caption];
}

const note = (text: string): PaperBlock => ({ kind: 'paragraph', role: 'note', runs: [{ text }] });
