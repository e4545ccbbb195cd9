import { enteringOf } from '../../lib/graph/entering.ts';
import { type Graph, orderOf } from '../../lib/graph/graph.ts';
import { isInput, type Quantity } from '../../lib/graph/quantity.ts';
import type { DesignState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { blockQuantities } from '../blockQuantities.ts';
import { conditionHolds } from '../condition.ts';
import { uncertaintyOf } from '../paper/uncertainties.ts';
import { keyNumbers } from './keyNumbers.ts';
import { originsOf } from './origins.ts';
import { ownPageBlocks } from './ownPagesPart.ts';
import { ownWordsQuantities } from './ownWords.ts';
import { blocksFor } from './sections.ts';

type Design = Omit<DesignState, 'revision'>;

/** Numbers that the rationale of this design shows or chooses its words by. */
export function rationaleQuantities(graph: Graph, design: Design): Quantity[] {
  const { inputs, studies = noStudies } = design;
  const blocks = [...blocksFor(design), ...ownPageBlocks(graph, studies)].filter(
    ({ when }) => when === undefined || conditionHolds(when, inputs),
  );
  const read = [
    ...blocks.flatMap((block) => [...blockQuantities(block), ...(block.needs ?? [])]),
    ...originsOf(inputs).map(({ quantity }) => quantity),
    ...keyNumbers({ graph, studies }),
    ...studies.requirements.flatMap(({ id }) => graph.quantities.get(id) ?? []),
    ...ownWordsQuantities(graph, studies.texts),
  ];
  return [...new Set(read)];
}

/** What tells how far those numbers hold: uncertainties, notes on validity, and what names formula and source. */
function behind(read: readonly Quantity[], inputs: Design['inputs']): Quantity[] {
  const order = orderOf(read, (quantity) => enteringOf(quantity, inputs));
  const noted = order.filter((quantity) => quantity.kind === 'derived' && quantity.valid !== undefined);
  const uncertain = read.flatMap((quantity) => uncertaintyOf(quantity, { inputs }) ?? []);
  const named = read.flatMap((quantity) =>
    quantity.kind === 'derived' && !quantity.picks && (quantity.enteredFor || quantity.sourceFor)
      ? Object.values(quantity.from)
      : [],
  );
  return [...noted, ...uncertain, ...named];
}

/** Ids of all results that `composeRationale` reads for this design; an engine or a worker evaluates them. */
export function rationaleIds(graph: Graph, design: Design): string[] {
  return idsRead(rationaleQuantities(graph, design), design.inputs);
}

/** Ids of all results that are read where these quantities are written on paper. */
export function idsRead(read: readonly Quantity[], inputs: Design['inputs']): string[] {
  return idsOf([...read, ...behind(read, inputs)]);
}

/** Ids of what is told of an alternative. */
export function alternativeIds(
  graph: Graph,
  { studies = noStudies }: Design,
  inputs: Design['inputs'],
): string[] {
  const read = keyNumbers({ graph, studies });
  return idsOf([...read, ...read.flatMap((quantity) => uncertaintyOf(quantity, { inputs }) ?? [])]);
}

function idsOf(quantities: readonly Quantity[]): string[] {
  const results = quantities.filter((quantity) => !isInput(quantity) && quantity.kind !== 'constant');
  return [...new Set(results.map(({ id }) => id))];
}
