import type { Solution } from '../../../../lib/studies/solveRequest.ts';
import {
  apart,
  atLimitsSaid,
  blockedSaid,
  changesOf,
  consequencesSaid,
  missedSaid,
  solutionText,
  solvedSaid,
  valueText,
  wantText,
} from '../../../solveWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { comparedTable, createDocumentChoice } from '../comparedTable.ts';
import { studiesUntil } from '../desk/studiesUntil.ts';
import { actButton } from '../formField.ts';
import { type Proposal, toolMemory } from '../toolMemory.ts';
import { plainTable } from './plainTable.ts';

/** What was found, to take over or to leave. */
export interface ProposalView {
  readonly element: HTMLElement;
  /** Shows the proposal of the memory, or none. */
  show(): void;
  /** Marks it where the design has changed since. */
  follow(): void;
}

/** `again` looks once more, `left` puts the focus somewhere after the proposal has gone. */
export function createProposal(
  context: PageContext,
  stops: (() => void)[],
  hearer: { again(): void; left(words: string): void },
): ProposalView {
  const { document, live } = context;
  const memory = toolMemory(live);
  const startStudy = studiesUntil(stops);
  const said = element(document, 'p', { class: 'study-said', 'aria-live': 'polite' });
  const body = element(document, 'div', {});
  const choose = createDocumentChoice(document, 'solve-document');
  const consequences = element(document, 'p', { class: 'choices-summary', 'aria-live': 'polite' });
  const table = element(document, 'div', { class: 'compare-tables' });
  const effects = element(document, 'div', {}, choose.holder, consequences, table);
  const older = element(document, 'p', { class: 'study-older', role: 'status' });
  const acts = element(document, 'p', { class: 'study-acts' });
  const holder = element(
    document,
    'section',
    { class: 'study-answer', 'aria-label': 'Proposal', hidden: true },
    said,
    body,
    older,
    acts,
    effects,
  );
  const isOlder = ({ inputs }: Proposal) => {
    const now = live.state().inputs;
    return Object.keys(now).some((id) => !Object.is(now[id], inputs[id]));
  };
  const leave = (words: string) => {
    memory.proposal = undefined;
    show();
    hearer.left(words);
  };
  const compare = () => {
    const { proposal } = memory;
    const solution = proposal && solutionsOf(proposal)[proposal.chosen];
    if (!proposal || !solution) return;
    const { title, ids } = choose.chosen();
    const designs = [
      { name: 'today', inputs: proposal.inputs },
      { name: 'proposal', inputs: { ...proposal.inputs, ...solution.patch } },
    ];
    table.setAttribute('data-older', '');
    const own = live.state().studies?.ownLines ?? [];
    const asked = startStudy({ kind: 'compare', designs, ids, own }, { tool: 'solve-compare' });
    void asked.answer.then((outcome) => {
      if ('problem' in outcome) {
        if (outcome.problem.kind !== 'stopped') setText(consequences, outcome.problem.message);
        return;
      }
      setText(consequences, consequencesSaid(outcome.value, title));
      const caption = `Numbers of ‘${title}’ that would change`;
      table.replaceChildren(comparedTable(context, caption, ['today', 'proposal'], outcome.value.results));
      table.removeAttribute('data-older');
    });
  };
  const take = (solution: Solution) => {
    try {
      live.set(solution.patch);
      leave('Taken over. Undo takes it back.');
    } catch (error) {
      setText(older, (error as Error).message);
    }
  };
  const follow = () => {
    const { proposal } = memory;
    if (!proposal) return;
    const now = isOlder(proposal);
    holder.toggleAttribute('data-older', now);
    setText(older, now ? 'The design has changed since this was found.' : '');
    const solution = solutionsOf(proposal)[proposal.chosen];
    const words = proposal.result.met ? 'Take this over' : 'Take the nearest over';
    const changes = solution ? changesOf(solution, live.state().inputs) : [];
    const focused = acts.contains(document.activeElement);
    acts.replaceChildren(
      ...(now ? [actButton(document, 'Look again', hearer.again)] : []),
      ...(!now && solution && changes.length > 0
        ? [actButton(document, words, () => take(solution), { class: 'study-go' })]
        : []),
      actButton(document, 'Discard', () => leave('')),
    );
    if (focused) (acts.firstElementChild as HTMLElement).focus();
  };
  const show = () => {
    // An own quantity that was wanted may be gone.
    if (memory.proposal?.request.wants.some(({ id }) => !live.graph.quantities.has(id)))
      memory.proposal = undefined;
    const { proposal } = memory;
    holder.hidden = !proposal;
    if (!proposal) return setText(said, '');
    setText(said, solvedSaid(proposal.result));
    const pick = (place: number) => {
      proposal.chosen = place;
      showBody(proposal);
    };
    const others = otherSolutions(context, proposal, pick);
    const chosen = element(document, 'div', {});
    body.replaceChildren(...others, chosen);
    const showBody = (one: Proposal) => {
      chosen.replaceChildren(...tellOf(context, one));
      effects.hidden = solutionsOf(one).length === 0;
      compare();
      follow();
    };
    showBody(proposal);
  };
  choose.select.addEventListener('change', compare);
  return { element: holder, show, follow };
}

/** The solution, or the nearest to one, and further ones. */
function solutionsOf({ result }: Proposal): readonly Solution[] {
  const { patch, values, part, others } = result;
  if (!patch || !values) return [];
  return [{ patch, values, ...(part === undefined ? {} : { part }) }, ...others];
}

function otherSolutions(
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

function tellOf({ document, live: { graph } }: PageContext, proposal: Proposal): HTMLElement[] {
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
