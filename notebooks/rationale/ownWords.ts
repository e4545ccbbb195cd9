import type { Graph } from '../../lib/graph/graph.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { ownProse } from '../ownProse.ts';
import type { PaperBlock } from '../paper/paper.ts';
import { writtenProse } from '../paper/writtenProse.ts';
import { slotQuantities } from '../prose.ts';
import { ownTexts } from './section.ts';
import type { ToldDesign } from './told.ts';

/** What the person wrote for a part: Markdown with `{id}` for live values and `$…$` for equations. */
export function ownWordsBlocks(told: ToldDesign, name: string): PaperBlock[] {
  const text = told.studies.texts[name] ?? '';
  return text.trim() === '' ? [] : writtenProse(ownProse(told.graph, text), told, { headings: 3 });
}

/** Quantities that the person's words show. */
export function ownWordsQuantities(graph: Graph, texts: Readonly<Record<string, string>>): Quantity[] {
  return Object.keys(ownTexts).flatMap((name) =>
    ownProse(graph, texts[name] ?? '').slots.flatMap(slotQuantities),
  );
}
