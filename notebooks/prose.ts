import MarkdownIt from 'markdown-it';
import { hasValue, type Outcome, type ProblemNote } from '../lib/graph/outcome.ts';
import type { Quantity, ValuesOf } from '../lib/graph/quantity.ts';
import type { Patch } from '../lib/graph/state.ts';
import { holdPercent } from '../lib/graph/unitText.ts';

/** Quantities that a block, sentence or link reads, by the names its view uses. */
export type From = Readonly<Record<string, Quantity>>;

/** A run of a sentence: plain words, or a quantity shown as its value. */
export type Phrase = string | readonly (string | Quantity)[];

/** A sentence that is code: chosen by the values, every branch tested. */
export interface Sentence {
  readonly slot: 'sentence';
  readonly from: From;
  /** Quantities that the phrase may show although the choice of words does not need them to have a value. */
  readonly also: readonly Quantity[];
  /** Said where a value is missing: for words that must always stand there. */
  readonly otherwise?: Phrase;
  view(values: Readonly<Record<string, unknown>>): Phrase;
}

/** Words that set inputs when chosen. */
export interface SetsLink {
  readonly slot: 'link';
  readonly text: string;
  readonly from: From;
  patch(values: Readonly<Record<string, unknown>>): Patch;
}

/** Words that lead to another block of the same document. */
export interface JumpLink {
  readonly slot: 'jump';
  readonly text: string;
  /** Id of the block. */
  readonly to: string;
}

/** An equation in the line of text, TeX. */
export interface InlineMath {
  readonly slot: 'math';
  readonly tex: string;
}

/** A word of the trade whose meaning can be opened in place. */
export interface Term {
  readonly slot: 'term';
  readonly text: string;
  /** Id of the word. */
  readonly word: string;
}

export type Slot =
  | { readonly slot: 'value'; readonly quantity: Quantity }
  | Sentence
  | SetsLink
  | JumpLink
  | InlineMath
  | Term;

/** A node of parsed prose. */
export type ProseNode =
  | { readonly tag: string; readonly children: readonly ProseNode[]; readonly href?: string }
  | { readonly text: string }
  | { readonly slotIndex: number };

/** Prose: parsed once, with the places where values go. */
export interface Prose {
  readonly nodes: readonly ProseNode[];
  readonly slots: readonly Slot[];
}

/** A piece of what a slot shows: words, or the value of a quantity. */
export type Piece = { readonly text: string } | { readonly text: string; readonly quantity: Quantity };

/** A sentence slot; `view` sees the values, and may return quantities of `from` to be shown. */
export function says<const F extends From>(
  from: F,
  view: (values: ValuesOf<F>) => Phrase,
  also: readonly Quantity[] = [],
  otherwise?: Phrase,
): Sentence {
  return { slot: 'sentence', from, also, otherwise, view } as unknown as Sentence;
}

/** A phrase with quantities, words and phrases in it, for sentences. Its quantities must be among the sentence's `from`. */
export function phrase(strings: TemplateStringsArray, ...parts: readonly (Quantity | Phrase)[]): Phrase {
  return strings.flatMap((text, i) => [text, ...(i < parts.length ? [parts[i]!].flat() : [])]);
}

/** A link that sets inputs, its patch fixed or made from values. */
export function sets<const F extends From>(
  text: string,
  patch: Patch | ((values: ValuesOf<F>) => Patch),
  from: F = {} as F,
): SetsLink {
  const make = typeof patch === 'function' ? patch : () => patch;
  return { slot: 'link', text, from, patch: make } as unknown as SetsLink;
}

/** A link to another block of the same document. */
export function leads(text: string, to: string): JumpLink {
  return { slot: 'jump', text, to };
}

/** A word whose meaning opens in place: `term('Rayleigh length')`, `term('as wide', 'diameter')`. */
export function term(text: string, word = text.toLowerCase().replaceAll(' ', '-')): Term {
  return { slot: 'term', text, word };
}

/** An equation in a line of text. */
export function math(strings: TemplateStringsArray): InlineMath {
  return { slot: 'math', tex: strings.raw.join('') };
}

const markdown = new MarkdownIt({ html: false, typographer: false });
/** Private-use characters that no one types mark the slots while Markdown is parsed. */
const open = '\uE000';
const close = '\uE001';

/** What stands in Markdown for the slot of that number. */
export const slotMark = (index: number): string => `${open}${index}${close}`;

/** Markdown with quantities, sentences, links and equations in it. */
export function prose(
  strings: TemplateStringsArray,
  ...inserts: readonly (Quantity | Exclude<Slot, { readonly slot: 'value' }>)[]
): Prose {
  const slots = inserts.map(
    (insert): Slot => ('slot' in insert ? insert : { slot: 'value', quantity: insert }),
  );
  const text = strings.reduce((all, part, i) => `${all}${i === 0 ? '' : slotMark(i - 1)}${part}`, '');
  return parseProse(text.replace(/^[ \t]+/gm, ''), slots, markdown);
}

/** Markdown whose slots are marked by {@link slotMark} as prose, read by that reader. */
export function parseProse(source: string, slots: readonly Slot[], reader: typeof markdown): Prose {
  return { nodes: readTokens(reader.parse(holdPercent(source), {})), slots };
}

type Token = ReturnType<(typeof markdown)['parse']>[number];

/** markdown-it's flat tokens as a tree. */
function readTokens(tokens: readonly Token[]): ProseNode[] {
  const stack: { tag: string; href?: string; children: ProseNode[] }[] = [{ tag: '', children: [] }];
  const add = (...nodes: ProseNode[]) => stack.at(-1)!.children.push(...nodes);
  for (const token of tokens) {
    if (token.nesting === 1) {
      const href = token.attrGet('href');
      stack.push({ tag: token.tag, children: [], ...(href === null ? {} : { href: String(href) }) });
    } else if (token.nesting === -1) {
      const node = stack.pop()!;
      add(node);
    } else if (token.type === 'inline') add(...readTokens(token.children ?? []));
    else if (token.type === 'text') add(...splitSlots(token.content));
    else if (token.type === 'softbreak') add({ text: ' ' });
    else if (token.tag) add({ tag: token.tag, children: token.content ? splitSlots(token.content) : [] });
  }
  return stack[0]!.children;
}

function splitSlots(text: string): ProseNode[] {
  return text
    .split(/(\uE000\d+\uE001)/)
    .filter((part) => part !== '')
    .map((part) => (part.startsWith(open) ? { slotIndex: Number(part.slice(1, -1)) } : { text: part }));
}

/** Quantities that a slot reads. */
export function slotQuantities(slot: Slot): readonly Quantity[] {
  if (slot.slot === 'value') return [slot.quantity];
  if (slot.slot === 'math' || slot.slot === 'jump' || slot.slot === 'term') return [];
  return slot.slot === 'sentence' ? [...Object.values(slot.from), ...slot.also] : Object.values(slot.from);
}

/** The values that a view needs, or the first problem that keeps it from having them. */
export function readValues(
  from: From,
  outcomeOf: (quantity: Quantity) => Outcome,
): { readonly values: Record<string, unknown> } | { readonly problem: ProblemNote } {
  const values: Record<string, unknown> = {};
  for (const [key, quantity] of Object.entries(from)) {
    const outcome = outcomeOf(quantity);
    if (!hasValue(outcome)) return { problem: outcome.problem };
    values[key] = outcome.value;
  }
  return { values };
}

/** Quantities that the words of these nodes cannot do without; a link says beside itself what it lacks. */
export function neededQuantities(text: Prose, nodes: readonly ProseNode[] = text.nodes): Quantity[] {
  const needed = nodes.flatMap((node): readonly Quantity[] => {
    if ('children' in node) return neededQuantities(text, node.children);
    const slot = 'slotIndex' in node ? text.slots[node.slotIndex]! : undefined;
    if (slot?.slot === 'value') return [slot.quantity];
    return slot?.slot === 'sentence' && slot.otherwise === undefined ? Object.values(slot.from) : [];
  });
  return [...new Set(needed)];
}

/** The first problem among quantities. */
export function firstProblem(
  quantities: readonly Quantity[],
  outcomeOf: (quantity: Quantity) => Outcome,
): ProblemNote | undefined {
  for (const quantity of quantities) {
    const outcome = outcomeOf(quantity);
    if (!hasValue(outcome)) return outcome.problem;
  }
  return undefined;
}

/** Stands once where a block or a figure has nothing to show because the document's own result is missing. */
export const waitingText = 'Nothing here until the problem named at the top is mended.';

/**
 * What stands in place of words or a figure with a problem; undefined where there is none. Where the result of the
 * document is missing, its top says why, and everything else holds still.
 */
export function standIn(own: ProblemNote | undefined, ofResult: ProblemNote | undefined): string | undefined {
  if (own === undefined) return undefined;
  return ofResult === undefined ? own.message : waitingText;
}
