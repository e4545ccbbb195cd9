import { hasValue } from '../../lib/graph/outcome.ts';
import { isInput } from '../../lib/graph/quantity.ts';
import type { PaperBlock, Run } from '../paper/paper.ts';
import { withUncertainty, writtenValue } from '../paper/writtenValue.ts';
import { listed } from '../shortTexts.ts';
import { hasFile } from './measuredFiles.ts';
import { fileNameOf, originsOf } from './origins.ts';
import type { ToldDesign } from './told.ts';

/** Beam, plate and surface as they are taken, each with where it is from. */
export function originBlocks(told: ToldDesign): PaperBlock[] {
  const rows = originsOf(told.inputs).map(({ quantity, words }): (readonly Run[])[] => {
    const known = hasValue(told.outcomeOf(quantity));
    return [
      [{ text: quantity.name }],
      [{ text: writtenValue(quantity, told), ...(known ? { quantity: quantity.id } : {}) }],
      [{ text: withUncertainty(quantity, told) ?? 'not known' }],
      [{ text: words }],
    ];
  });
  return [
    {
      kind: 'table',
      caption: 'Beam, plate and surface as taken, and where each value is from',
      columns: ['number', 'value', 'standard uncertainty', 'where it is from'],
      rows,
    },
    { kind: 'paragraph', runs: [{ text: filesSaid(told) }] },
  ];
}

/** Which files are in the design. */
export function filesSaid({ graph, inputs }: Pick<ToldDesign, 'graph' | 'inputs'>): string {
  const files = graph.order.filter(isInput).filter((input) => hasFile(input, inputs));
  if (files.length === 0) return 'No measured file is in this design.';
  const names = files.map((input) => `${input.name} (${fileNameOf(input, inputs)})`);
  return `${files.length === 1 ? 'One measured file is' : `${files.length} measured files are`} in this design: ${listed(names)}.`;
}
