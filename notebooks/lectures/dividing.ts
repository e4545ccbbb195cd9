import type { Graph } from '../../lib/graph/graph.ts';
import type { Patch } from '../../lib/graph/state.ts';
import type { OwnBlock, OwnDocument } from '../../lib/graph/studies.ts';
import { longestTitle } from '../../lib/studies/freshNames.ts';
import type { StepDraft } from '../../lib/studies/lectures.ts';
import { blockChoices, blockTitle, headingIn } from '../blockChoices.ts';
import { conditionHolds } from '../condition.ts';
import type { Block, StepwellDocument } from '../document.ts';
import { isShowable } from '../ownBlocks.ts';
import { pieceWords } from '../pieceWords.ts';
import { pulseCautions } from '../pulseCautions.ts';

/** A piece that a step can be made of. */
export interface Part {
  readonly piece: OwnBlock;
  /** What it is about, as a title. */
  readonly title: string;
  /** The same with its kind, as one chooses it: "Chart: Fluence across the spot". */
  readonly label: string;
  /** It begins something new, under its title. */
  readonly isHeading: boolean;
  /** It fills a screen, so that two of them want two. */
  readonly isLarge: boolean;
  /** A caution: these stand together behind the rest. */
  readonly isCaution: boolean;
}

/** What of a document the design shows, in order. */
export function partsOfDocument(document: StepwellDocument, inputs: Patch): readonly Part[] {
  const { id, blocks } = document;
  const labels = new Map(blockChoices(document).map((choice) => [choice.id, choice.label]));
  return blocks
    .filter((block) => isShowable(block) && (!block.when || conditionHolds(block.when, inputs)))
    .map((block) => ({
      piece: { kind: 'block', document: id, block: block.id },
      title: blockTitle(id, block),
      label: labels.get(block.id)!,
      isHeading: block.kind === 'prose' && headingIn(block.prose) !== undefined,
      isLarge: !isSmall(block.kind),
      isCaution: isCaution(block),
    }));
}

const isSmall = (kind: Block['kind']): boolean =>
  kind === 'prose' || kind === 'caution' || kind === 'controls';

const cautions = new Set(pulseCautions.map(({ id }) => id));
const isCaution = ({ kind, id }: Block): boolean => kind === 'caution' || cautions.has(id);

/** The pieces of an own page, in order. */
export function partsOfPage(
  graph: Graph,
  documents: readonly StepwellDocument[],
  { blocks }: OwnDocument,
): readonly Part[] {
  return blocks.map((piece) => {
    const lent = lentBlock(documents, piece);
    const heading = piece.kind === 'text' ? textHeading(piece.text) : undefined;
    const words = pieceWords(graph, documents, piece);
    return {
      piece,
      title: heading ?? words,
      label: words,
      isHeading: heading !== undefined,
      isLarge: fillsScreen(documents, piece),
      isCaution: lent !== undefined && isCaution(lent),
    };
  });
}

function lentBlock(documents: readonly StepwellDocument[], piece: OwnBlock): Block | undefined {
  if (piece.kind !== 'block') return undefined;
  const document = documents.find(({ id }) => id === piece.document);
  return document?.blocks.find(({ id }) => id === piece.block);
}

/** Charts, tables and the like: what a question is mostly about. */
export function fillsScreen(documents: readonly StepwellDocument[], piece: OwnBlock): boolean {
  const lent = lentBlock(documents, piece);
  return lent ? !isSmall(lent.kind) : piece.kind === 'values' || piece.kind === 'chart';
}

/** The heading that a text begins with. */
const textHeading = (text: string): string | undefined => /^\s*#{1,6}\s+(.+)$/m.exec(firstLine(text))?.[1];

const firstLine = (text: string): string => text.trimStart().split('\n', 1)[0]!;

/**
 * Steps in the order of the parts: each heading begins one, and so does what fills a screen where the step holds such a
 * thing already. What stands before the first heading goes under `title`, all cautions into the last step.
 */
export function dividedIntoSteps(title: string, parts: readonly Part[]): readonly StepDraft[] {
  const steps: { readonly title: string; readonly parts: Part[] }[] = [];
  for (const part of parts.filter((one) => !one.isCaution)) {
    const last = steps.at(-1);
    if (last && !beginsStep(last.parts, part)) last.parts.push(part);
    else steps.push({ title: last || part.isHeading ? part.title : title, parts: [part] });
  }
  const warned = parts.filter((one) => one.isCaution);
  return [
    ...steps.map((step) => draft(step.title, step.parts)),
    ...(warned.length === 0 ? [] : [draft('Cautions', warned)]),
  ];
}

function beginsStep(before: readonly Part[], { isHeading, isLarge }: Part): boolean {
  return isHeading || (isLarge && before.some((one) => one.isLarge));
}

/** Each part a step of its own. */
export const eachAStep = (parts: readonly Part[]): readonly StepDraft[] =>
  parts.map((part) => draft(part.title, [part]));

/** All parts in one step, under the first one's title. */
export const asOneStep = (parts: readonly Part[]): readonly StepDraft[] =>
  parts.length === 0 ? [] : [draft(parts[0]!.title, parts)];

function draft(title: string, parts: readonly Part[]): StepDraft {
  return {
    title: title.slice(0, longestTitle),
    pieces: parts.flatMap(({ piece, isHeading }, i) =>
      // The step says its title itself.
      i === 0 && isHeading && piece.kind === 'text' ? withoutHeading(piece.text) : [piece],
    ),
  };
}

function withoutHeading(text: string): OwnBlock[] {
  const rest = text.trimStart().split('\n').slice(1).join('\n').trim();
  return rest === '' ? [] : [{ kind: 'text', text: rest }];
}
