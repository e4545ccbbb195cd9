import type { Comparison } from '../../../../lib/studies/compare.ts';
import type { Solution } from '../../../../lib/studies/solveRequest.ts';
import { changesOf, consequencesSaid, solvedSaid } from '../../../solveWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { comparedTable, createDocumentChoice } from '../comparedTable.ts';
import { studiesUntil } from '../desk/studiesUntil.ts';
import { actButton } from '../formField.ts';
import { type Proposal, toolMemory } from '../toolMemory.ts';
import { createWholeComparison } from '../wholeComparison.ts';
import { otherSolutions, solutionsOf, tellOf } from './proposalTables.ts';

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
  const whole = createWholeComparison(context, stops, 'solve-whole', (comparison) => tellEffects(comparison));
  const effects = element(document, 'div', {}, choose.holder, consequences, whole.element, table);
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
  const tellEffects = (comparison: Comparison) => {
    const { title } = choose.chosen();
    setText(consequences, consequencesSaid(comparison, title));
    const caption = `Numbers of ‘${title}’ that would change`;
    table.replaceChildren(comparedTable(context, caption, ['today', 'proposal'], comparison.results));
    table.removeAttribute('data-older');
  };
  const compare = () => {
    const { proposal } = memory;
    const solution = proposal && solutionsOf(proposal)[proposal.chosen];
    if (!proposal || !solution) return;
    const { ids } = choose.chosen();
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
      tellEffects(outcome.value);
      whole.offer(designs, ids, outcome.value.heavy.length);
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
