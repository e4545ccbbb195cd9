import type { Outcome } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { canBeAsked, numberOf, requirementOf } from '../../../../lib/studies/requirements.ts';
import { requirementSaid, standingOf } from '../../../requirementWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setAttributes, setText } from '../../element.ts';
import { createRequirementForm } from './requirementForm.ts';
import { watchAged } from './watchAged.ts';

/** What is required of an opened number, in full, and the form to set it; nothing for what is no number. */
export function renderRequirement(
  context: PageContext,
  quantity: Quantity,
  stops: (() => void)[],
): HTMLElement[] {
  if (!canBeAsked(quantity)) return [];
  const { document, live } = context;
  const said = element(document, 'p', { class: 'requirement-said', 'aria-live': 'polite' });
  const summary = element(document, 'summary', {});
  let [outcome, older]: [Outcome | undefined, boolean] = [undefined, true];
  const form = createRequirementForm(
    context,
    () => numberOf(outcome),
    () => {
      more.open = requirementOf(live.state(), quantity.id) === undefined;
      if (!more.open) summary.focus();
    },
  );
  const more = element(document, 'details', { class: 'requirement-more' }, summary, form.element);
  const show = () => {
    const asked = requirementOf(live.state(), quantity.id);
    const standing = asked && standingOf(asked, quantity, outcome, older);
    setText(said, standing ? requirementSaid(standing) : '');
    setAttributes(said, { 'data-verdict': standing?.verdict });
    said.hidden = standing === undefined;
    setText(summary, asked ? 'Change what is required of it' : 'Require something of this number');
    form.show(quantity);
  };
  stops.push(
    watchAged(live, quantity, (now, isOlder) => {
      [outcome, older] = [now, isOlder];
      show();
    }),
    live.onState(show),
  );
  show();
  return [element(document, 'div', { class: 'requirement' }, said, more)];
}
