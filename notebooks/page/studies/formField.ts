import type { ChoiceInput, Quantity } from '../../../lib/graph/quantity.ts';
import { findNamed, type NamedQuantity } from '../../studyNames.ts';
import { freshId } from '../controls/field.ts';
import { element } from '../element.ts';
import { attachOffers } from './offers.ts';

/** A label above a field. */
export function labelledField(
  document: Document,
  words: string,
  field: HTMLElement,
  width = '',
): HTMLElement {
  const label = element(
    document,
    'label',
    { class: `study-field ${width}`.trim() },
    element(document, 'span', {}, words),
    field,
  );
  return label;
}

/** A text field that holds what `text` says and tells of every change of it. */
export function textField(
  document: Document,
  text: string,
  changed: (text: string) => void,
): HTMLInputElement {
  const field = element(document, 'input', {
    type: 'text',
    class: 'field-text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
  });
  field.value = text;
  field.addEventListener('input', () => changed(field.value));
  return field;
}

/** A list of a few ways. */
export function selectField<T extends string>(
  document: Document,
  options: Readonly<Record<T, string>>,
  chosen: T,
  changed: (way: T) => void,
): HTMLSelectElement {
  const select = element(
    document,
    'select',
    { class: 'field-list' },
    ...Object.entries<string>(options).map(([value, words]) => element(document, 'option', { value }, words)),
  );
  select.value = chosen;
  select.addEventListener('change', () => changed(select.value as T));
  return select;
}

/** A search field with the list of what it finds. */
export interface SearchField {
  readonly input: HTMLInputElement;
  readonly list: HTMLElement;
}

/**
 * A field that finds a quantity by words of its name or id. `typed` hears every change of its text, `found` each time
 * another quantity stands in it, or none any more.
 */
export function searchField(
  document: Document,
  names: () => readonly NamedQuantity[],
  text: string,
  hearer: { typed(text: string): void; found(quantity: Quantity | undefined): void },
): SearchField {
  let before = findNamed(names(), text);
  const follow = (typed: string) => {
    hearer.typed(typed);
    const now = findNamed(names(), typed);
    if (now === before) return;
    before = now;
    hearer.found(now);
  };
  const input = textField(document, text, follow);
  const { list } = attachOffers(
    document,
    input,
    () => names().map(({ quantity }) => quantity),
    (quantity) => {
      input.value = names().find((one) => one.quantity === quantity)!.label;
      follow(input.value);
    },
    { holds: true },
  );
  return { input, list };
}

/** A label above a search field, and what it finds below it. */
export function labelledSearch(document: Document, words: string, { input, list }: SearchField): HTMLElement {
  input.id ||= freshId();
  const label = element(document, 'label', { for: input.id }, words);
  return element(document, 'div', { class: 'study-field study-wide study-search' }, label, input, list);
}

/** A plain button. */
export function actButton(
  document: Document,
  words: string,
  run: () => void,
  attributes: Readonly<Record<string, string>> = {},
): HTMLButtonElement {
  const button = element(document, 'button', { type: 'button', class: 'plain', ...attributes }, words);
  button.addEventListener('click', run);
  return button;
}

/** Tick boxes for the ways of a choice; those ticked stand in `form.options` in the order of the choice. */
export function optionBoxes(
  document: Document,
  form: { options: string[] },
  input: ChoiceInput,
  changed: () => void,
): HTMLElement {
  const boxes = Object.entries<string>(input.options).map(([value, words]) => {
    const box = element(document, 'input', { type: 'checkbox' });
    box.checked = form.options.includes(value);
    box.addEventListener('change', () => {
      form.options = Object.keys(input.options).filter((other) =>
        other === value ? box.checked : form.options.includes(other),
      );
      changed();
    });
    return element(document, 'label', { class: 'field-option' }, box, words);
  });
  return element(
    document,
    'div',
    { class: 'field-options', role: 'group', 'aria-label': `Ways of ${input.name} to take` },
    ...boxes,
  );
}

/** A part of a form under its legend. */
export function formPart(document: Document, legend: string, ...children: HTMLElement[]): HTMLElement {
  return element(
    document,
    'fieldset',
    { class: 'study-part' },
    element(document, 'legend', {}, legend),
    ...children,
  );
}
