import type { Outcome, ProblemNote } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { shownValue } from '../../../../lib/graph/shown.ts';
import type { Requirement } from '../../../../lib/graph/studies.ts';
import type { ComparedDesign } from '../../../../lib/studies/compare.ts';
import type { LightOutcomes } from '../../../../lib/studies/lightOutcomes.ts';
import type { Verdict } from '../../../../lib/studies/requirements.ts';
import {
  boundsText,
  failedFirst,
  howFarText,
  requirementsSaid,
  type Standing,
  standingOf,
} from '../../../requirementWords.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';
import { verdictSign } from '../../requirementMarks.ts';

/** All that is asked, a row each, and how each of several designs stands to it, a column each; hidden while nothing is. */
export function judgedTable(
  { document, live, open }: PageContext,
  requirements: readonly Requirement[],
  designs: readonly ComparedDesign[],
  outcomesOf: LightOutcomes,
): HTMLElement {
  const ids = requirements.map(({ id }) => id);
  const columns = designs.map(({ name, inputs }) => {
    const outcomes = outcomesOf(inputs, ids);
    const standings = requirements.map((one) =>
      standingIn(one, live.graph.quantities.get(one.id), outcomes[one.id]),
    );
    return { name, standings };
  });
  const heads = columns.map(({ name, standings }) => {
    const verdicts = standings.map(({ verdict }) => verdict);
    const sign = verdictSign(document, worstOf(verdicts), requirementsSaid(verdicts));
    return element(document, 'th', { scope: 'col' }, name, sign);
  });
  const rows = requirements.map((requirement, i) => {
    const quantity = live.graph.quantities.get(requirement.id);
    const label = quantity
      ? element(document, 'button', { type: 'button', class: 'plain' }, quantity.name)
      : requirement.id;
    if (quantity)
      (label as HTMLElement).addEventListener('click', () => open(quantity, label as HTMLElement));
    const cells = columns.map(({ standings }) =>
      element(document, 'td', {}, ...cellOf(document, standings[i]!)),
    );
    return element(
      document,
      'tr',
      {},
      element(
        document,
        'th',
        { scope: 'row' },
        label,
        element(document, 'small', {}, ` ${boundsText(requirement, quantity)}`),
      ),
      ...cells,
    );
  });
  const made = element(
    document,
    'table',
    { class: 'table' },
    element(document, 'caption', {}, 'What is asked, design by design'),
    element(document, 'thead', {}, element(document, 'tr', {}, element(document, 'td', {}), ...heads)),
    element(document, 'tbody', {}, ...rows),
  );
  const holder = element(document, 'div', { class: 'compare-table judged-table' }, made);
  holder.hidden = requirements.length === 0;
  return holder;
}

function standingIn(
  requirement: Requirement,
  quantity: Quantity | undefined,
  outcome: Outcome | undefined,
): Standing {
  return standingOf(requirement, quantity, outcome ?? { problem: tooLong });
}

/** What is worked out beside the page only once a design is today's. */
const tooLong: ProblemNote = {
  kind: 'outside',
  message: 'it takes a longer computation, and shows once the design is taken over.',
  parts: {},
  at: '',
};

function cellOf(document: Document, standing: Standing): (Node | string)[] {
  const { quantity, outcome, verdict } = standing;
  const value = quantity && outcome ? shownValue(quantity, outcome) : '—';
  const words = `${verdict}, ${howFarText(standing)}`;
  return [
    value,
    verdictSign(document, verdict, words),
    ' ',
    element(document, 'small', {}, howFarText(standing)),
  ];
}

/** One sign for many: not met where any is not. */
export function worstOf(verdicts: readonly Verdict[]): Verdict {
  return failedFirst(verdicts.map((verdict) => ({ verdict })))[0]?.verdict ?? 'met';
}
