import { designGraph } from '../lib/design/design.ts';
import { hasValue, type Outcome } from '../lib/graph/outcome.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { resolvePatch } from '../lib/graph/state.ts';
import { holdPercent } from '../lib/graph/unitText.ts';
import { Problem } from '../lib/problem.ts';
import {
  firstProblem,
  neededQuantities,
  type Piece,
  type Prose,
  type ProseNode,
  readValues,
  type SetsLink,
  type Slot,
} from './prose.ts';

/** Why a link cannot set what its words say: in a few words, and as a whole sentence. */
export interface Refusal {
  readonly short: string;
  readonly message: string;
}

/** The refusal of a link as the design stands; undefined where the link can be taken. */
export function linkRefusal(link: SetsLink, outcomeOf: (quantity: Quantity) => Outcome): Refusal | undefined {
  const values: Record<string, unknown> = {};
  for (const [key, quantity] of Object.entries(link.from)) {
    const outcome = outcomeOf(quantity);
    if (!hasValue(outcome)) return { short: 'not possible here', message: outcome.problem.message };
    values[key] = outcome.value;
  }
  try {
    resolvePatch(designGraph, link.patch(values));
    return undefined;
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const { input, value, allowed } = error.parts;
    const name = designGraph.quantities.get(input ?? '')?.name;
    if (name === undefined || value === undefined || allowed === undefined)
      return { short: 'not possible here', message: error.message };
    return { short: `${name} ${value} would be needed; allowed is ${allowed}`, message: error.message };
  }
}

/** What a slot shows for the outcomes of its quantities; the page and headless both use this and nothing else. */
export function slotPieces(slot: Slot, outcomeOf: (quantity: Quantity) => Outcome): readonly Piece[] {
  if (slot.slot === 'math') return [{ text: slot.tex }];
  if (slot.slot === 'jump' || slot.slot === 'term') return [{ text: slot.text }];
  if (slot.slot === 'link') {
    const refusal = linkRefusal(slot, outcomeOf);
    return refusal ? [{ text: slot.text }, { text: ` (${refusal.short})` }] : [{ text: slot.text }];
  }
  const show = (quantity: Quantity): Piece => ({ text: shownValue(quantity, outcomeOf(quantity)), quantity });
  if (slot.slot === 'value') return [show(slot.quantity)];
  const read = readValues(slot.from, outcomeOf);
  const said = 'values' in read ? slot.view(read.values) : (slot.otherwise ?? []);
  return (typeof said === 'string' ? [said] : said).map((part) =>
    typeof part === 'string' ? { text: holdPercent(part) } : show(part),
  );
}

/** The whole prose as plain text, for summaries, tests and the command line. */
export function proseText(text: Prose, outcomeOf: (quantity: Quantity) => Outcome): string {
  const read = (node: ProseNode): string => {
    if ('slotIndex' in node) {
      return slotPieces(text.slots[node.slotIndex]!, outcomeOf)
        .map((piece) => piece.text)
        .join('');
    }
    if ('text' in node) return node.text;
    const problem = node.tag === 'p' && firstProblem(neededQuantities(text, [node]), outcomeOf);
    if (problem) return `${problem.message}\n`;
    return node.children.map(read).join('') + (/^(p|h\d|li)$/.test(node.tag) ? '\n' : '');
  };
  return text.nodes.map(read).join('');
}
