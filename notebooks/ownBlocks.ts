import type { Graph } from '../lib/graph/graph.ts';
import { isInput, type Quantity } from '../lib/graph/quantity.ts';
import { checkInput } from '../lib/graph/state.ts';
import type { OwnBlock } from '../lib/graph/studies.ts';
import { Problem } from '../lib/problem.ts';
import { valuesBetween } from '../lib/studies/vary.ts';
import type { Block, FigureSpec, StepwellDocument, ToolBlock } from './document.ts';
import { ownEquation } from './ownEquation.ts';
import { ownProse } from './ownProse.ts';
import { withRanges } from './ownRanges.ts';
import { type Prose, type Slot, says } from './prose.ts';
import { isNumberResult } from './studyNames.ts';
import type { VaryPlan } from './varyForm.ts';

interface Captioned {
  /** A heading above it, where the piece brings none of its own. */
  readonly heading?: string;
  /** Words below it. */
  readonly caption?: string;
}

/** What a piece of an own page comes to: a block as in any document, a chart still to be worked out, or what is wrong. */
export type OwnContent =
  | (Captioned & { readonly kind: 'block'; readonly block: Block })
  | (Captioned & {
      readonly kind: 'chart';
      readonly id: string;
      readonly plan: VaryPlan;
      /** Only its axes and its title are drawn. */
      readonly bare?: boolean;
    })
  | { readonly kind: 'problem'; readonly message: string };

/** Ids side by side, of values or of inputs. */
interface Listing {
  readonly ids: readonly string[];
  readonly title?: string;
}
type Piece<K extends OwnBlock['kind']> = Extract<OwnBlock, { readonly kind: K }>;

/** A piece of an own page over a graph, `id` its block's. Whatever a file holds, what cannot be shown is told in words. */
export function ownBlockToBlock(
  graph: Graph,
  documents: readonly StepwellDocument[],
  piece: OwnBlock,
  id: string,
): OwnContent {
  try {
    return contentOf(graph, documents, piece, id);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { kind: 'problem', message: error.message };
  }
}

/** The pieces of a page in order; a tool works once on a page only. */
export function ownContents(
  graph: Graph,
  documents: readonly StepwellDocument[],
  pieces: readonly OwnBlock[],
  idOf: (piece: OwnBlock, place: number) => string,
): readonly OwnContent[] {
  const tools = new Set<string>();
  return pieces.map((piece, place) => {
    const content = ownBlockToBlock(graph, documents, piece, idOf(piece, place));
    if (content.kind !== 'block' || content.block.kind !== 'tool') return content;
    const { tool } = content.block;
    if (tools.has(tool))
      return {
        kind: 'problem',
        message: 'This tool stands further up on this page already; take one of them out.',
      };
    tools.add(tool);
    return content;
  });
}

function contentOf(
  graph: Graph,
  documents: readonly StepwellDocument[],
  piece: OwnBlock,
  id: string,
): OwnContent {
  switch (piece.kind) {
    case 'text':
      return { kind: 'block', block: { kind: 'prose', id, prose: ownProse(graph, piece.text) } };
    case 'block':
      return borrowed(documents, piece, id);
    case 'values':
      return { kind: 'block', block: valuesTable(graph, piece, id), ...captionOf(piece) };
    case 'controls':
      return { kind: 'block', block: controls(graph, piece, id), ...captionOf(piece) };
    case 'equation':
      return {
        kind: 'block',
        block: { kind: 'prose', id, prose: ownEquation(numberOf(graph, piece.id)) },
        ...titled(piece),
      };
    case 'chart':
      return { kind: 'chart', id, plan: planOf(graph, piece), ...titled(piece) };
  }
}

const captionOf = ({ caption }: { readonly caption?: string }) => (caption ? { caption } : {});
const titled = (piece: { readonly title?: string; readonly caption?: string }) => ({
  ...(piece.title ? { heading: piece.title } : {}),
  ...captionOf(piece),
});

/** A block of a document, its charts with the person's title and ends of the axes. */
function borrowed(documents: readonly StepwellDocument[], piece: Piece<'block'>, id: string): OwnContent {
  const document = documents.find((one) => one.id === piece.document);
  const block = document?.blocks.find((one) => one.id === piece.block);
  if (!block || !isShowable(block))
    throw new Problem(
      'absent',
      `The piece ‘${piece.block.slice(0, 40)}’ of ‘${(document?.title ?? piece.document).slice(0, 40)}’ is not there in this program; take it out or choose another.`,
    );
  const ranged = (spec: FigureSpec) => withRanges(spec, piece.x, piece.y);
  switch (block.kind) {
    case 'figure': {
      const view = (values: Readonly<Record<string, unknown>>) => {
        const spec = ranged(block.view(values));
        return piece.title ? { ...spec, title: piece.title } : spec;
      };
      return { kind: 'block', block: { ...block, id, view }, ...captionOf(piece) };
    }
    case 'figures':
      return {
        kind: 'block',
        block: { ...block, id, view: (values) => block.view(values).map(ranged) },
        ...titled(piece),
      };
    case 'prose':
    case 'caution':
      return { kind: 'block', block: { ...block, id, prose: withoutJumps(block.prose) }, ...titled(piece) };
    default:
      return { kind: 'block', block: { ...block, id }, ...titled(piece) };
  }
}

/** Tools of pages that hold other pages, or are not about the design: nothing borrows them. */
const keptToThemselves: readonly string[] = [
  'own-pages',
  'lectures',
  'lessons',
] satisfies ToolBlock['tool'][];
export const isShowable = (block: Block): boolean =>
  block.kind !== 'tool' || !keptToThemselves.includes(block.tool);

/** Where a link leads to in its document is not on this page. */
function withoutJumps({ nodes, slots }: Prose): Prose {
  const words = (slot: Slot): Slot => (slot.slot === 'jump' ? says({}, () => slot.text) : slot);
  return { nodes, slots: slots.map(words) };
}

function noNumber(id: string): string {
  return `There is no number ‘${id.slice(0, 40)}’`;
}

function numberOf(graph: Graph, id: string): Quantity {
  const quantity = graph.quantities.get(id);
  if (!quantity) throw new Problem('absent', `${noNumber(id)}; choose another or take this piece out.`);
  return quantity;
}

function valuesTable(graph: Graph, { ids, title }: Listing, id: string): Block {
  const rows = ids.map((one) => {
    const quantity = graph.quantities.get(one);
    return quantity ? [quantity.name, quantity] : [`${noNumber(one)}.`, '—'];
  });
  return { kind: 'table', id, table: { caption: title ?? 'Values', columns: ['', 'value'], rows } };
}

function controls(graph: Graph, { ids, title }: Listing, id: string): Block {
  const inputs = ids.map((one) => numberOf(graph, one));
  const other = inputs.find((quantity) => !isInput(quantity));
  if (other)
    throw new Problem(
      'impossible',
      `${other.name} follows from other values and cannot be set; choose inputs.`,
    );
  return { kind: 'controls', id, heading: title ?? 'Inputs', inputs };
}

/** What a chart needs worked out; whole numbers where the input takes nothing else. */
function planOf(graph: Graph, { over, ids }: Piece<'chart'>): VaryPlan {
  const input = numberOf(graph, over.id);
  if (input.kind !== 'number')
    throw new Problem('impossible', `A chart runs over an input that is a number, not over ${input.name}.`);
  if (over.unit !== input.unit)
    throw new Problem(
      'impossible',
      `The ends of the chart are given in ‘${over.unit.slice(0, 20)}’, but ${input.name} is in ${input.unit}; set them again.`,
    );
  const results = ids.map((id) => numberOf(graph, id)).filter(isNumberResult);
  if (results.length === 0)
    throw new Problem('absent', 'A chart needs a number that follows from others; choose one.');
  if (over.from >= over.to) throw new Problem('impossible', 'The first end has to be below the second one.');
  const even = valuesBetween(over.from, over.to, over.count, over.by);
  const values = input.whole ? [...new Set(even.map(Math.round))] : even;
  for (const value of values) checkInput(input, value);
  return { axes: [{ input, values, by: over.by }], results };
}
