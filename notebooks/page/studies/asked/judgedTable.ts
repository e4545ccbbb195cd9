import type { Outcome, ProblemNote } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { shownValue } from '../../../../lib/graph/shown.ts';
import type { Requirement } from '../../../../lib/graph/studies.ts';
import type { ComparedDesign } from '../../../../lib/studies/compare.ts';
import type { KeptOutcomes } from '../../../../lib/studies/keptOutcomes.ts';
import {
  boundsText,
  howFarText,
  requirementsSaid,
  type Standing,
  standingOf,
  worstOf,
} from '../../../requirementWords.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';
import { verdictSign } from '../../requirementMarks.ts';

/** All that is asked, a row each, and how each of several designs stands to it, a column each; `today` holds what the page shows now. */
export function judgedTable(
  { document, live, open }: PageContext,
  requirements: readonly Requirement[],
  designs: readonly ComparedDesign[],
  outcomes: KeptOutcomes,
  today: ReadonlyMap<string, Outcome>,
): HTMLElement {
  const ids = requirements.map(({ id }) => id);
  const quantities = ids.map((id) => live.graph.quantities.get(id));
  const columns = designs.map(({ name, inputs }) => {
    const found = outcomes.of(inputs, ids);
    // Of today's design the page knows more: what its worker has found.
    const known = (id: string) => found[id] ?? (inputs === live.state().inputs ? today.get(id) : undefined);
    const standings = requirements.map((one, i) =>
      standingOf(one, quantities[i], known(one.id) ?? { problem: notYet }),
    );
    return { name, standings };
  });
  const heads = columns.map(({ name, standings }) => {
    const verdicts = standings.map(({ verdict }) => verdict);
    const sign = verdictSign(document, worstOf(verdicts), requirementsSaid(verdicts));
    return element(document, 'th', { scope: 'col' }, name, sign);
  });
  const nameOf = (quantity: Quantity | undefined, id: string): Node | string => {
    if (!quantity) return id;
    const button = element(document, 'button', { type: 'button', class: 'plain' }, quantity.name);
    button.addEventListener('click', () => open(quantity, button));
    return button;
  };
  const rows = requirements.map((requirement, i) => {
    const bounds = element(document, 'small', {}, boundsText(requirement, quantities[i]));
    const label = element(
      document,
      'th',
      { scope: 'row' },
      nameOf(quantities[i], requirement.id),
      ' ',
      bounds,
    );
    const cells = columns.map(({ standings }) =>
      element(document, 'td', {}, ...cellOf(document, standings[i]!)),
    );
    return element(document, 'tr', {}, label, ...cells);
  });
  return element(
    document,
    'table',
    { class: 'table' },
    element(document, 'caption', {}, 'What is asked, design by design'),
    element(document, 'thead', {}, element(document, 'tr', {}, element(document, 'td', {}), ...heads)),
    element(document, 'tbody', {}, ...rows),
  );
}

/** Long work is done when somebody asks for it. */
const notYet: ProblemNote = { kind: 'outside', message: 'it takes a longer computation.', parts: {}, at: '' };

function cellOf(document: Document, standing: Standing): (Node | string)[] {
  const { quantity, outcome, verdict } = standing;
  const far = howFarText(standing);
  const sign = verdictSign(document, verdict, verdict);
  return [
    quantity && outcome ? shownValue(quantity, outcome as Outcome) : '—',
    sign,
    ' ',
    element(document, 'small', {}, far),
  ];
}
