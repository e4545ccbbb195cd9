import type { Outcome } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { shownValue } from '../../../../lib/graph/shown.ts';
import type { Requirement } from '../../../../lib/graph/studies.ts';
import { canBeAsked, type Verdict } from '../../../../lib/studies/requirements.ts';
import { boundsText, howFarText, standingOf, verdictWord } from '../../../requirementWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setAttributes, setText } from '../../element.ts';
import { verdictSign } from '../../requirementMarks.ts';
import { watchAged } from './watchAged.ts';

export const rowColumns = ['number', 'required', 'today', 'verdict', 'because', ''];

/** A requirement as a row that follows its number. */
export interface RequirementRow {
  readonly requirement: Requirement;
  readonly quantity: Quantity | undefined;
  readonly verdict: Verdict;
  readonly line: HTMLElement;
  close(): void;
}

/** What a row tells of and asks for. */
export interface RowHearer {
  changed(): void;
  edit(): void;
  remove(): void;
}

export function createRequirementRow(
  { document, live, open }: PageContext,
  requirement: Requirement,
  hearer: RowHearer,
): RequirementRow {
  const quantity = live.graph.quantities.get(requirement.id);
  const name = quantity?.name ?? requirement.id;
  const act = (words: string, label: string, run: () => void) => {
    const button = element(
      document,
      'button',
      { type: 'button', class: 'plain', 'aria-label': label },
      words,
    );
    button.addEventListener('click', run);
    return button;
  };
  const heading = element(document, 'th', { scope: 'row', role: 'rowheader' });
  if (quantity) {
    const button = element(document, 'button', { type: 'button', class: 'plain requirement-name' }, name);
    button.addEventListener('click', () => open(quantity, button));
    heading.append(button);
  } else heading.append(name);
  const cell = (label: string, ...children: (Node | string)[]) =>
    element(document, 'td', { role: 'cell', 'data-label': label }, ...children);
  const [value, verdictCell] = [cell('today'), cell('')];
  const reason = cell(requirement.reason === '' ? '' : 'because', requirement.reason);
  const acts = element(
    document,
    'td',
    { role: 'cell', class: 'requirement-acts' },
    ...(canBeAsked(quantity) ? [act('Change', `Change what is required of ${name}`, hearer.edit)] : []),
    act('Take out', `Take out what is required of ${name}`, hearer.remove),
  );
  const line = element(
    document,
    'tr',
    { role: 'row' },
    heading,
    cell('required', boundsText(requirement, quantity)),
    value,
    verdictCell,
    reason,
    acts,
  );
  let verdict: Verdict | undefined;
  const show = (outcome: Outcome | undefined, older: boolean) => {
    const standing = standingOf(requirement, quantity, outcome, older);
    setText(value, quantity && outcome ? shownValue(quantity, outcome) : '—');
    setAttributes(value, { 'data-older': older });
    const word = verdictWord(standing.verdict);
    const note = outcome && 'note' in outcome && outcome.note !== undefined ? ` But: ${outcome.note}` : '';
    const sign = verdictSign(document, standing.verdict, word);
    sign.setAttribute('aria-hidden', 'true');
    verdictCell.replaceChildren(sign, ` ${word}: ${howFarText(standing)}.${note}`);
    setAttributes(line, { 'data-verdict': standing.verdict });
    const moved = verdict !== standing.verdict;
    verdict = standing.verdict;
    return moved;
  };
  show(undefined, false);
  const close = quantity ? watchAged(live, quantity, (...now) => show(...now) && hearer.changed()) : () => {};
  return {
    requirement,
    quantity,
    get verdict() {
      return verdict!;
    },
    line,
    close,
  };
}
