import type { Graph } from '../../lib/graph/graph.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { PaperBlock } from '../paper/paper.ts';
import { writtenProse } from '../paper/writtenProse.ts';
import { type InlineMath, type Prose, prose, slotQuantities } from '../prose.ts';
import { ownTexts } from './section.ts';
import type { ToldDesign } from './told.ts';

/** `{id}` for a value of the design, `$…$` for an equation. */
const insert = /\{([a-z][A-Za-z0-9.]*)\}|\$([^$\n]{1,500})\$/;

/** The person's Markdown as prose: `{id}` is a live value, `$…$` an equation; what is no id stays as it was typed. */
export function ownProse(text: string, graph: Graph): Prose {
  const strings: string[] = [''];
  const inserts: (Quantity | InlineMath)[] = [];
  // Private-use characters mark the places of values; a text must not bring its own.
  for (let rest = text.replace(/[\uE000-\uF8FF]/g, ''); rest !== ''; ) {
    const found = insert.exec(rest);
    const quantity = found?.[1] === undefined ? undefined : graph.quantities.get(found[1]);
    const made =
      quantity ?? (found?.[2] === undefined ? undefined : { slot: 'math' as const, tex: found[2] });
    const end = found ? found.index + found[0].length : rest.length;
    strings[strings.length - 1] += made ? rest.slice(0, found!.index) : rest.slice(0, end);
    if (made) {
      inserts.push(made);
      strings.push('');
    }
    rest = rest.slice(end);
  }
  return prose(Object.assign(strings, { raw: strings }), ...inserts);
}

/** What the person wrote for a part. */
export function ownWordsBlocks(told: ToldDesign, name: string): PaperBlock[] {
  const text = told.studies.texts[name] ?? '';
  return text.trim() === '' ? [] : writtenProse(ownProse(text, told.graph), told, { headings: 3 });
}

/** Quantities that the person's words show. */
export function ownWordsQuantities(graph: Graph, texts: Readonly<Record<string, string>>): Quantity[] {
  return Object.keys(ownTexts).flatMap((name) =>
    ownProse(texts[name] ?? '', graph).slots.flatMap(slotQuantities),
  );
}
