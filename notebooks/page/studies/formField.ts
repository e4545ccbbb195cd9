import type { ChoiceInput, Quantity } from '../../../lib/graph/quantity.ts';
import { findNamed, type NamedQuantity } from '../../studyNames.ts';
import { element } from '../element.ts';

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

/** Names to choose from in the search fields of one tool. */
export function nameList(document: Document, id: string, names: readonly NamedQuantity[]): HTMLElement {
  const options = names.map(({ label, quantity }) =>
    element(document, 'option', { value: label }, quantity.id),
  );
  return element(document, 'datalist', { id }, ...options);
}

/**
 * A field that finds a quantity by a part of its name or id. `typed` hears every change of its text, `found` each time
 * another quantity stands in it, or none any more.
 */
export function searchField(
  document: Document,
  list: string,
  names: () => readonly NamedQuantity[],
  text: string,
  hearer: { typed(text: string): void; found(quantity: Quantity | undefined): void },
): HTMLInputElement {
  let before = findNamed(names(), text);
  const field = textField(document, text, (typed) => {
    hearer.typed(typed);
    const now = findNamed(names(), typed);
    if (now === before) return;
    before = now;
    hearer.found(now);
  });
  field.setAttribute('list', list);
  field.setAttribute('placeholder', 'a part of its name');
  return field;
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
