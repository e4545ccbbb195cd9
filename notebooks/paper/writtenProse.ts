import type { ProblemNote } from '../../lib/graph/outcome.ts';
import { firstProblem, neededQuantities, type Prose, type ProseNode } from '../prose.ts';
import type { PaperBlock, Run } from './paper.ts';
import { lineText, writtenLine } from './writtenLine.ts';
import type { Told } from './writtenValue.ts';

type Role = Extract<PaperBlock, { readonly kind: 'paragraph' }>['role'];

/** How prose is written. */
export interface ProseStyle {
  readonly role?: Role;
  /** Level that its uppermost headings get; without it headings are left out. */
  readonly headings?: 1 | 2 | 3;
}

/** Prose as blocks of a paper. A paragraph that lacks a value is left out; `lackingInProse` tells why. */
export function writtenProse(prose: Prose, told: Told, style: ProseStyle = {}): PaperBlock[] {
  return prose.nodes.flatMap((node) => blocksOf(prose, node, told, style));
}

function blocksOf(prose: Prose, node: ProseNode, told: Told, style: ProseStyle): PaperBlock[] {
  if (!('children' in node)) return paragraph(writtenLine(prose, [node], told), style.role);
  if (lacks(prose, node, told)) return [];
  const { tag, children } = node;
  if (/^h\d$/.test(tag)) return heading(lineText(writtenLine(prose, children, told)), tag, style);
  if (tag === 'p') return paragraph(writtenLine(prose, children, told), style.role);
  if (tag === 'ul' || tag === 'ol') {
    const items = children
      .filter((item) => !lacksWithin(prose, item, told))
      .map((item) => writtenLine(prose, flat(item), told))
      .filter((runs) => runs.length > 0);
    return items.length === 0 ? [] : [{ kind: 'list', ordered: tag === 'ol', items }];
  }
  return children.flatMap((child) => blocksOf(prose, child, told, style));
}

/** Paragraphs inside an item of a list are one line. */
function flat(node: ProseNode): readonly ProseNode[] {
  if (!('children' in node)) return [node];
  return /^(li|p|ul|ol)$/.test(node.tag) ? node.children.flatMap((child) => [...flat(child)]) : [node];
}

function heading(text: string, tag: string, { headings }: ProseStyle): PaperBlock[] {
  if (headings === undefined || text === '') return [];
  // Documents begin at the second level, below their title.
  const level = Math.min(3, Math.max(1, headings + Number(tag.slice(1)) - 2)) as 1 | 2 | 3;
  return [{ kind: 'heading', level, text }];
}

function paragraph(runs: readonly Run[], role: Role): PaperBlock[] {
  if (runs.length === 0) return [];
  return [{ kind: 'paragraph', runs, ...(role === undefined ? {} : { role }) }];
}

function lacks(prose: Prose, node: ProseNode, told: Told): ProblemNote | undefined {
  if (!('tag' in node) || node.tag !== 'p') return undefined;
  return firstProblem(neededQuantities(prose, [node]), (quantity) => told.outcomeOf(quantity));
}

/** The first thing that paragraphs within a node lack. */
function lacksWithin(prose: Prose, node: ProseNode, told: Told): ProblemNote | undefined {
  const own = lacks(prose, node, told);
  if (own || !('children' in node)) return own;
  for (const child of node.children) {
    const inner = lacksWithin(prose, child, told);
    if (inner) return inner;
  }
  return undefined;
}

/** Why paragraphs of this prose are left out. */
export function lackingInProse(prose: Prose, told: Told): ProblemNote[] {
  return prose.nodes.flatMap((node) => lacksWithin(prose, node, told) ?? []);
}
