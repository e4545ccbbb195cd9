import type { Solution } from '../../../../lib/studies/solveRequest.ts';
import {
  apart,
  atLimitsSaid,
  blockedSaid,
  changesOf,
  missedSaid,
  solutionText,
  valueText,
  wantText,
} from '../../../solveWords.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';
import type { Proposal } from '../toolMemory.ts';
import { plainTable } from './plainTable.ts';

/** The solution, or the nearest to one, and further ones. */
export function solutionsOf({ result }: Proposal): readonly Solution[] {
  const { patch, values, part, others } = result;
  if (!patch || !values) return [];
  return [{ patch, values, ...(part === undefined ? {} : { part }) }, ...others];
}

/** Solutions to choose among, where there are several. */
export function otherSolutions(
  { document, live }: PageContext,
  proposal: Proposal,
  pick: (place: number) => void,
): HTMLElement[] {
  const solutions = solutionsOf(proposal);
  if (solutions.length < 2) return [];
  const boxes = solutions.map((solution, place) => {
    const box = element(document, 'input', { type: 'radio', name: 'solve-solution' });
    box.checked = place === proposal.chosen;
    box.addEventListener('change', () => pick(place));
    const words = solutionText(live.graph, solution, proposal.inputs);
    return element(document, 'label', { class: 'field-option' }, box, words);
  });
  return [
    element(
      document,
      'fieldset',
      { class: 'study-part study-solutions' },
      element(document, 'legend', {}, 'Solutions found'),
      ...boxes,
    ),
  ];
}

/** The chosen solution: what would change for it, and what it reaches; without one, why. */
export function tellOf({ document, live: { graph } }: PageContext, proposal: Proposal): HTMLElement[] {
  const { inputs, request, result, chosen } = proposal;
  const solution = solutionsOf(proposal)[chosen];
  const paragraph = (text: string) => (text === '' ? [] : [element(document, 'p', {}, text)]);
  const why = result.blocked ? blockedSaid(graph, request, result.blocked, inputs) : '';
  const told = [...paragraph(missedSaid(graph, result.missed)), ...paragraph(why)];
  if (!solution) return told;
  const changed = changesOf(solution, inputs);
  const rows = changed.map((id) => {
    const quantity = graph.quantities.get(id)!;
    const [now, then] = [inputs[id], solution.patch[id]];
    const numbers = typeof now === 'number' && typeof then === 'number';
    const texts = numbers
      ? apart(quantity, now, then)
      : [valueText(graph, id, now), valueText(graph, id, then)];
    return [quantity.name, ...texts];
  });
  const part = solution.part === undefined ? '' : ` (${solution.part})`;
  const wants = request.wants.map((want) => {
    const quantity = graph.quantities.get(want.id)!;
    return [quantity.name, wantText(graph, want), valueText(graph, want.id, solution.values[want.id])];
  });
  return [
    ...told,
    ...(rows.length === 0
      ? paragraph('No input has to change: today’s design has it already.')
      : [plainTable(document, `Inputs that would change${part}`, ['input', 'today', 'proposal'], rows)]),
    plainTable(document, 'What is wanted', ['result', 'wanted', 'proposal'], wants),
    ...paragraph(chosen === 0 ? atLimitsSaid(graph, result.atLimits) : ''),
  ];
}
