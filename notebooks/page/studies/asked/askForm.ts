import type { Outcome } from '../../../../lib/graph/outcome.ts';
import { shownValue } from '../../../../lib/graph/shown.ts';
import { canBeAsked, type NumberQuantity, numberOf } from '../../../../lib/studies/requirements.ts';
import { findNamed, labelled, type NamedQuantity, notFoundSaid } from '../../../studyNames.ts';
import type { PageContext } from '../../context.ts';
import { freshId } from '../../controls/field.ts';
import { element, setText } from '../../element.ts';
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
  const list = element(document, 'datalist', { id: freshId() });
  const search = element(document, 'input', {
    type: 'text',
    class: 'field-text',
    id: freshId(),
    list: list.id,
    autocomplete: 'off',
    spellcheck: 'false',
    placeholder: 'a part of its name',
  });
  const now = element(document, 'p', { class: 'requirement-today', role: 'status' });
  const chosen = createChosen(context, stops, (text) => setText(now, text));
  const form = createRequirementForm(context, chosen.value, () => {
    search.value = '';
    take();
    search.focus();
    done();
  });
  let names: readonly NamedQuantity[] = [];
  const refill = () => {
    names = labelled([...live.graph.quantities.values()].filter(canBeAsked));
    list.replaceChildren(
      ...names.map(({ label, quantity }) => element(document, 'option', { value: label }, quantity.id)),
    );
  };
  const take = () => {
    const found = findNamed(names, search.value);
    chosen.choose(canBeAsked(found) ? found : undefined);
    form.show(chosen.quantity());
  };
  // The names are those of the graph as it is when somebody looks for one: formula lines come and go.
  search.addEventListener('focus', refill);
  search.addEventListener('input', take);
  search.addEventListener('change', () => {
    if (search.value.trim() !== '' && !chosen.quantity())
      setText(now, notFoundSaid(names, search.value, 'number'));
  });
  form.show(undefined);
  return {
    element: element(
      document,
      'div',
      { class: 'requirement-ask', role: 'group', 'aria-label': 'Ask something of a number' },
      element(document, 'label', { for: search.id, class: 'field-label' }, 'Ask something of'),
      search,
      list,
      now,
      form.element,
    ),
    edit(quantity) {
      refill();
      search.value = names.find((one) => one.quantity === quantity)?.label ?? quantity.id;
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
