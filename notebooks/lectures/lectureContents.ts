import type { Graph } from '../../lib/graph/graph.ts';
import type { LectureStep } from '../../lib/graph/studies.ts';
import { bareFigure } from '../bareFigure.ts';
import { headingIn } from '../blockChoices.ts';
import { documents } from '../contents.ts';
import type { Block } from '../document.ts';
import { type OwnContent, ownContents } from '../ownBlocks.ts';

/** What the pieces of a step come to, `idOf` their ids by place; the first text does not say the step’s title again. */
export function stepContents(
  graph: Graph,
  { title, pieces }: LectureStep,
  idOf: (place: number) => string,
): readonly OwnContent[] {
  const contents = ownContents(graph, documents, pieces, (_, place) => idOf(place));
  return contents.map((content, place) => (place === 0 ? withoutTitle(content, title) : content));
}

function withoutTitle(content: OwnContent, title: string): OwnContent {
  if (content.kind !== 'block' || content.block.kind !== 'prose') return content;
  const { block } = content;
  const [first, ...nodes] = block.prose.nodes;
  if (!first || nodes.length === 0 || headingIn({ ...block.prose, nodes: [first] }) !== title) return content;
  return { ...content, block: { ...block, prose: { ...block.prose, nodes } } };
}

/** What stands of a piece while it is withheld: of a chart its axes and its title, of all else nothing. */
export function withheldContent(content: OwnContent): OwnContent | undefined {
  const { kind } = content;
  if (kind === 'chart') return { kind, id: content.id, plan: content.plan, bare: true };
  const block = content.kind === 'block' ? bareBlock(content.block) : undefined;
  return block && { kind: 'block', block };
}

function bareBlock(block: Block): Block | undefined {
  if (block.kind === 'figure') return { ...block, view: (values) => bareFigure(block.view(values)) };
  if (block.kind === 'figures') return { ...block, view: (values) => block.view(values).map(bareFigure) };
  return undefined;
}

/** Whether a piece is something to look at rather than to read. */
export function isChart(content: OwnContent): boolean {
  if (content.kind === 'chart') return true;
  return content.kind === 'block' && ['figure', 'figures', 'picture'].includes(content.block.kind);
}
