import type { Outcome } from '../../../../lib/graph/outcome.ts';
import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { shownValue } from '../../../../lib/graph/shown.ts';
import { canBeAsked, type NumberQuantity, numberOf } from '../../../../lib/studies/requirements.ts';
import { findNamed, notFoundSaid } from '../../../studyNames.ts';
import type { PageContext } from '../../context.ts';
import { freshId } from '../../controls/field.ts';
import { element, setText } from '../../element.ts';
import { createNames } from '../names.ts';
import { attachOffers } from '../offers.ts';
import { createRequirementForm } from './requirementForm.ts';

/** The part of the tool that asks something of any number: which number, the bounds, the reason. */
export interface AskForm {
  readonly element: HTMLElement;
  /** Fills in a number with what is asked of it, and puts the cursor there. */
  edit(quantity: NumberQuantity): void;
  /** Follows a change of the design. */
  follow(): void;
}

/** The form with a field that finds numbers by their names; `done` hears of every change made with it. */
export function createAskForm(context: PageContext, stops: (() => void)[], done: () => void): AskForm {
  const { document, live } = context;
  const search = element(document, 'input', { type: 'text', class: 'field-text', id: freshId() });
  const now = element(document, 'p', { class: 'requirement-today', role: 'status' });
  const chosen = createChosen(context, stops, (text) => setText(now, text));
  const form = createRequirementForm(context, chosen.value, () => {
    search.value = '';
    take();
    search.focus();
    done();
  });
  const names = createNames(live, canBeAsked);
  const labelOf = (quantity: Quantity) =>
    names().find((one) => one.quantity === quantity)?.label ?? quantity.id;
  const take = () => {
    const found = findNamed(names(), search.value);
    chosen.choose(canBeAsked(found) ? found : undefined);
    form.show(chosen.quantity());
  };
  const offers = attachOffers(
    document,
    search,
    () => names().map(({ quantity }) => quantity),
    (quantity) => {
      search.value = labelOf(quantity);
      take();
    },
    { holds: true },
  );
  search.addEventListener('input', take);
  search.addEventListener('change', () => {
    if (search.value.trim() !== '' && !chosen.quantity())
      setText(now, notFoundSaid(names(), search.value, 'number'));
  });
  form.show(undefined);
  return {
    element: element(
      document,
      'div',
      { class: 'requirement-ask', role: 'group', 'aria-label': 'Ask something of a number' },
      element(document, 'label', { for: search.id, class: 'field-label' }, 'Ask something of'),
      element(document, 'div', { class: 'study-search' }, search, offers.list),
      now,
      form.element,
    ),
    edit(quantity) {
      search.value = labelOf(quantity);
      take();
      form.focus();
    },
    follow: () => form.show(chosen.quantity()),
  };
}

/** The number that is chosen, watched while it is. */
function createChosen({ live }: PageContext, stops: (() => void)[], say: (text: string) => void) {
  let quantity: NumberQuantity | undefined;
  let outcome: Outcome | undefined;
  let stop = () => {};
  stops.push(() => stop());
  return {
    quantity: () => quantity,
    value: () => numberOf(outcome),
    choose(next: NumberQuantity | undefined) {
      if (next === quantity) return next ? undefined : say('');
      stop();
      [quantity, outcome, stop] = [next, undefined, () => {}];
      say('');
      if (!next) return;
      stop = live.watch(next, {
        changed: (now) => {
          outcome = now;
          say(`Today: ${'problem' in now ? now.problem.message : shownValue(next, now)}`);
        },
      });
    },
  };
}
