import { blockName } from './blockNames.ts';
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

/** Characters of the words by which a block is told. */
const longestWords = 40;

/** Documents that lend their blocks to own pages and lectures: those that hold more than a tool for these. */
export const lending = (documents: readonly StepwellDocument[]): readonly StepwellDocument[] =>
  documents.filter(({ blocks }) => blocks.length > 0 && blocks.every(isShowable));

/** The blocks of a document in order, each told by its kind and by what it or the heading in it says. */
export function blockChoices({ id: document, blocks }: StepwellDocument): readonly BlockChoice[] {
  const counts = new Map<string, number>();
  return blocks.filter(isShowable).map((block) => {
    const label = `${kindWords[block.kind]}: ${blockTitle(document, block)}`;
    const count = (counts.get(label) ?? 0) + 1;
    counts.set(label, count);
    return { id: block.id, label: count === 1 ? label : `${label} (${count})` };
  });
}

/** True where ends of axes can be set. */
export const hasAxes = (block: Block | undefined): boolean =>
  block?.kind === 'figure' || block?.kind === 'figures';

/** What a block is about, as a title of it. */
export function blockTitle(document: string, block: Block): string {
  const own = ownWords(block) ?? blockName(document, block);
  // Whatever is added later is told by its id until it has a name.
  return own ?? block.id.replaceAll('-', ' ');
}

/** What a block says of itself whatever the design is; none where that is too little. */
function ownWords(block: Block): string | undefined {
  switch (block.kind) {
    case 'prose':
    case 'caution':
      return headingIn(block.prose) ?? firstWords(block.prose);
    case 'question':
      return firstWords(block.question);
    case 'table':
      return block.table.caption;
    case 'controls':
      return block.heading;
    default:
      return undefined;
  }
}

/** The first heading in a text, where one stands there. */
export function headingIn(prose: Prose): string | undefined {
  const found = prose.nodes.find((node) => 'tag' in node && /^h\d$/.test(node.tag));
  return found && textOf(prose, found);
}

/** Words as they stand, `…` for what depends on the design. */
function textOf(prose: Prose, node: ProseNode): string {
  if ('text' in node) return node.text;
  if ('children' in node) return node.children.map((child) => textOf(prose, child)).join('');
  const slot = prose.slots[node.slotIndex]!;
  return slot.slot === 'term' ? slot.text : '…';
}

/** What it begins with: words that stand out there, or as many as fit before the first that depends on the design. */
function firstWords(prose: Prose): string | undefined {
  const { nodes } = prose;
  const [first] = nodes.flatMap((node) => ('children' in node ? node.children.slice(0, 1) : [node]));
  if (first && 'tag' in first && first.tag === 'strong') {
    const title = textOf(prose, first).replace(/[.:]$/, '');
    if (!title.includes('…')) return title;
  }
  const [words = ''] = nodes
    .map((node) => textOf(prose, node))
    .join(' ')
    .trim()
    .split('…');
  if (words.trim().length < longestWords / 3) return undefined;
  return shortened(words);
}

/** The first words of a text, as many as fit into a line of a list; marked where more follow. */
export function shortened(text: string): string {
  const words = text.trim().split(/\s+/);
  let shown = '';
  for (const word of words) {
    if (shown !== '' && shown.length + word.length >= longestWords) return `${shown} …`;
    shown = shown === '' ? word.slice(0, longestWords) : `${shown} ${word}`;
  }
  return shown;
}
