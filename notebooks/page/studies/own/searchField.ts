import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { kindWords, searchQuantities } from '../../../quantitySearch.ts';
import { freshId } from '../../controls/field.ts';
import { element, setAttributes, setText } from '../../element.ts';

/** As many are offered at a time. */
const mostOffered = 8;

/** A field that finds quantities while one types, and what is done with the one that is chosen. */
export interface SearchOptions {
  readonly label: string;
  readonly quantities: () => Iterable<Quantity>;
  chosen(quantity: Quantity): void;
}

/** Arrow keys move through what is found, Enter takes it, Escape puts the list away. */
export function createSearchField(
  document: Document,
  { label, quantities, chosen }: SearchOptions,
): { readonly element: HTMLElement; readonly input: HTMLInputElement } {
  const id = freshId();
  const list = element(document, 'ul', {
    role: 'listbox',
    id: `${id}-found`,
    'aria-label': 'What is found',
    hidden: true,
  });
  const input = element(document, 'input', {
    type: 'text',
    id,
    class: 'field-text',
    role: 'combobox',
    'aria-autocomplete': 'list',
    'aria-expanded': 'false',
    'aria-controls': list.id,
    autocomplete: 'off',
    spellcheck: 'false',
    placeholder: 'a word of its name',
  });
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  let found: readonly Quantity[] = [];
  let at = -1;
  const show = (open: boolean) => {
    list.hidden = !open;
    input.setAttribute('aria-expanded', String(open));
    for (const [i, option] of [...list.children].entries())
      setAttributes(option, { 'aria-selected': String(i === at) });
    if (open && at >= 0) input.setAttribute('aria-activedescendant', `${id}-${at}`);
    else input.removeAttribute('aria-activedescendant');
    if (open) list.children[at]?.scrollIntoView({ block: 'nearest' });
  };
  const take = (quantity: Quantity) => {
    input.value = '';
    setText(said, '');
    at = -1;
    found = [];
    show(false);
    chosen(quantity);
  };
  const search = () => {
    found = searchQuantities(quantities(), input.value, mostOffered);
    at = found.length > 0 ? 0 : -1;
    list.replaceChildren(...found.map((quantity, i) => offered(document, `${id}-${i}`, quantity, take)));
    const none = found.length === 0 && input.value.trim() !== '';
    setText(said, none ? 'Nothing of that name; try another word, or a part of one.' : '');
    show(found.length > 0);
  };
  input.addEventListener('input', search);
  input.addEventListener('blur', () => show(false));
  input.addEventListener('keydown', (event) => {
    const { key } = event;
    if (key === 'Enter') {
      event.preventDefault();
      const one = found[at];
      if (!list.hidden && one) take(one);
    } else if (key === 'Escape' && !list.hidden) {
      event.stopPropagation();
      show(false);
    } else if ((key === 'ArrowDown' || key === 'ArrowUp') && found.length > 0) {
      event.preventDefault();
      if (!list.hidden) at = (at + (key === 'ArrowDown' ? 1 : -1) + found.length) % found.length;
      show(true);
    }
  });
  const holder = element(
    document,
    'div',
    { class: 'own-field own-search' },
    element(document, 'label', { for: id }, label),
    input,
    list,
    said,
  );
  return { element: holder, input };
}

function offered(document: Document, id: string, quantity: Quantity, take: (quantity: Quantity) => void) {
  const option = element(
    document,
    'li',
    { role: 'option', id, 'aria-selected': 'false' },
    element(document, 'span', {}, quantity.name),
    ' ',
    element(document, 'small', {}, `${quantity.id} · ${kindWords(quantity)}`),
  );
  // Before the field loses the focus and closes the list.
  option.addEventListener('mousedown', (event) => {
    event.preventDefault();
    take(quantity);
  });
  return option;
}
