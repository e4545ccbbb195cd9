import MarkdownIt from 'markdown-it';
import { longestText } from '../lib/design/savedWritings.ts';
import type { Graph } from '../lib/graph/graph.ts';
import { nearestNames } from '../lib/studies/nearestNames.ts';
import { type Prose, type ProseNode, parseProse, type Slot, says, slotMark } from './prose.ts';

/** A text holds this many live values and equations; what comes after stays as it was written. */
export const mostSlots = 500;
const longestTex = 1000;

/**
 * Markdown of a person, whoever that is: HTML stays text, pictures are none, and links lead to web pages and addresses
 * of mail only.
 */
const markdown = new MarkdownIt({ html: false, typographer: false }).disable('image');
const leadsOut = (address: string) => /^(https?:\/\/|mailto:)/i.test(address.trim());
markdown.validateLink = leadsOut;

/** `\$`, `$$…$$` and `$…$` on one line, `{id}`. */
const places = /\\\$|\$\$([^$]+)\$\$|\$(?!\s)([^$\n]+?)(?<!\s)\$(?!\d)|\{([A-Za-z][A-Za-z0-9.]{0,79})\}/g;

/**
 * A text of a person as prose: `{spot.width}` is the live value of that quantity, `$w_0$` an equation, `$$…$$` a large
 * one. An id that there is not is told of in its place. Headings stand below the title of a page. Throws nothing: what
 * is more than a text may hold is left out.
 */
export function ownProse(graph: Graph, text: string): Prose {
  const slots: Slot[] = [];
  // Marks of slots are not for typing.
  const clean = text.slice(0, longestText).replace(/[\uE000\uE001]/g, '');
  const source = clean.replace(places, (written, large?: string, tex?: string, id?: string) => {
    if (written === '\\$') return '\\$';
    if (slots.length === mostSlots) return written;
    const slot = id === undefined ? mathSlot(large, tex) : valueSlot(graph, id);
    if (!slot) return written;
    slots.push(slot);
    return slotMark(slots.length - 1);
  });
  const { nodes } = parseProse(source, slots, markdown);
  return { nodes: ranked(nodes), slots };
}

function mathSlot(large: string | undefined, tex: string | undefined): Slot | undefined {
  const body = (large ?? tex)!.trim();
  if (body === '' || body.length > longestTex) return undefined;
  return { slot: 'math', tex: large === undefined ? body : `\\displaystyle ${body}` };
}

/** The rest of a paragraph stands although a value in it is missing: the person wrote it. */
function valueSlot(graph: Graph, id: string): Slot {
  const quantity = graph.quantities.get(id);
  if (quantity) return says({}, () => [quantity], [quantity]);
  return says({}, () => `(${missingSaid(graph, id)})`);
}

function missingSaid(graph: Graph, id: string): string {
  const [near] = nearestNames(id, [...graph.quantities.keys()], 1);
  const meant = near === undefined ? '' : `; did you mean ${near}?`;
  return `there is no number ‘${id.slice(0, 40)}’${meant}`;
}

/** The first name in a text that no number has, in words; empty where there is none. */
export function missingIn(graph: Graph, text: string): string {
  for (const [, , , id] of text.slice(0, longestText).matchAll(places))
    if (id !== undefined && !graph.quantities.has(id)) return missingSaid(graph, id);
  return '';
}

const headingOf = (node: ProseNode): number | undefined =>
  'tag' in node && /^h\d$/.test(node.tag) ? Number(node.tag[1]) : undefined;

/** The highest headings of the text are second ones, and none is left out below; links lose marks of slots. */
function ranked(nodes: readonly ProseNode[]): ProseNode[] {
  const levels = [...new Set(nodes.flatMap((node) => headingOf(node) ?? []))].sort((a, b) => a - b);
  const clean = (node: ProseNode): ProseNode => {
    if (!('tag' in node)) return node;
    const href = node.href?.replace(/%EE%80%80\d+%EE%80%81/g, '');
    const level = headingOf(node);
    const tag = level === undefined ? node.tag : `h${Math.min(4, 2 + levels.indexOf(level))}`;
    const children = node.tag === 'li' ? withoutLoneParagraph(node.children) : node.children;
    return { tag, children: children.map(clean), ...(href !== undefined && leadsOut(href) && { href }) };
  };
  return nodes.map(clean);
}

/** A point of a list that is one paragraph stands close to the next. */
function withoutLoneParagraph(children: readonly ProseNode[]): readonly ProseNode[] {
  const isParagraph = (node: ProseNode) => 'tag' in node && node.tag === 'p';
  if (children.filter(isParagraph).length !== 1) return children;
  return children.flatMap((node) => (isParagraph(node) && 'children' in node ? node.children : [node]));
}
