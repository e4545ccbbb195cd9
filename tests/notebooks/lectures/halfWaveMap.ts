import { designGraph } from '../../../lib/design/design.ts';
import { documents } from '../../../notebooks/contents.ts';
import { ownBlockToBlock } from '../../../notebooks/ownBlocks.ts';
import { readValues } from '../../../notebooks/prose.ts';
import { outcomesOf } from '../designOutcomes.ts';
import { stepOf } from './halfWaveStep.ts';

/** Ends of both axes of the map in the step on the plain focus, at a magnification of the expander. */
export function mapEnds(magnification: number): string {
  const { pieces, sets } = stepOf('plain-focus');
  const map = pieces.find((piece) => piece.kind === 'block')!;
  const content = ownBlockToBlock(designGraph, documents, map, 'map');
  if (content.kind !== 'block' || content.block.kind !== 'figure') throw new Error('no map in the step');
  const outcomeOf = outcomesOf({ ...sets, 'expander.magnification': magnification });
  const read = readValues(content.block.from, ({ id }) => outcomeOf(id));
  if (!('values' in read)) throw new Error(read.problem.message);
  const { x, y } = content.block.view(read.values);
  return JSON.stringify([x.domain, y.domain]);
}
