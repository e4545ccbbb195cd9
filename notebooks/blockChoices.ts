import type { Block, StepwellDocument } from './document.ts';
import { isShowable } from './ownBlocks.ts';
import type { Prose, ProseNode } from './prose.ts';

/** A block of a document as one chooses it. */
export interface BlockChoice {
  readonly id: string;
  readonly label: string;
}

const kindWords: Readonly<Record<Block['kind'], string>> = {
  prose: 'Text',
  caution: 'Caution',
  figure: 'Chart',
  figures: 'Charts',
  table: 'Table',
  choices: 'List',
  rows: 'List',
  controls: 'Inputs',
  picture: 'Picture',
  tool: 'Tool',
  question: 'Question',
};

/** The blocks of a document in order, each told by its kind and by what it or the heading above it says. */
export function blockChoices({ blocks }: StepwellDocument): readonly BlockChoice[] {
  let heading = '';
  const choices: BlockChoice[] = [];
  for (const block of blocks) {
    const own = block.kind === 'prose' ? headingIn(block.prose.nodes) : '';
    if (own !== '') heading = own;
    if (isShowable(block))
      choices.push({ id: block.id, label: `${kindWords[block.kind]}: ${wordsOf(block, own, heading)}` });
  }
  const isAlone = (label: string) => choices.filter((one) => one.label === label).length === 1;
  return choices.map(({ id, label }) =>
    isAlone(label) ? { id, label } : { id, label: `${label} (${id.replaceAll('-', ' ')})` },
  );
}

/** True where ends of axes can be set. */
export const hasAxes = (block: Block | undefined): boolean =>
  block?.kind === 'figure' || block?.kind === 'figures';

function wordsOf(block: Block, own: string, heading: string): string {
  if (own !== '') return own;
  const named = block.id.replaceAll('-', ' ');
  const placed = heading === '' ? named : `${named} (${heading})`;
  if (block.kind === 'prose' || block.kind === 'caution') return firstWords(block.prose) ?? placed;
  if (block.kind === 'question') return firstWords(block.question) ?? placed;
  if (block.kind === 'table') return block.table.caption;
  return block.kind === 'controls' ? block.heading : placed;
}

function headingIn(nodes: readonly ProseNode[]): string {
  const found = nodes.find((node) => 'tag' in node && /^h\d$/.test(node.tag));
  return found ? textOf(found) : '';
}

/** Words as they stand, `…` for what depends on the design. */
function textOf(node: ProseNode): string {
  if ('text' in node) return node.text;
  return 'children' in node ? node.children.map(textOf).join('') : '…';
}

/** None where most of it depends on the design. */
function firstWords({ nodes }: Prose): string | undefined {
  const words = nodes.map(textOf).join(' ').trim().split(/\s+/);
  if (words.slice(0, 4).some((word) => word.includes('…'))) return undefined;
  return words.length > 9 ? `${words.slice(0, 8).join(' ')} …` : words.join(' ');
}
