import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { freshId } from '../../controls/field.ts';
import { element, setText } from '../../element.ts';
import { attachOffers } from '../offers.ts';

/** A field that finds quantities while one types, and what is done with the one that is chosen. */
export interface SearchOptions {
  readonly label: string;
  readonly quantities: () => Iterable<Quantity>;
  chosen(quantity: Quantity): void;
}

/** A field that is empty again when a quantity was chosen. */
export function createSearchField(
  document: Document,
  { label, quantities, chosen }: SearchOptions,
): { readonly element: HTMLElement; readonly input: HTMLInputElement } {
  const id = freshId();
  const input = element(document, 'input', { type: 'text', id, class: 'field-text' });
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  const offers = attachOffers(document, input, quantities, (quantity) => {
    input.value = '';
    setText(said, '');
    chosen(quantity);
  });
  input.addEventListener('input', () => {
    const none = offers.count() === 0 && input.value.trim() !== '';
    setText(said, none ? 'Nothing of that name; try another word, or a part of one.' : '');
  });
  // Enter that takes nothing does not send the form around it.
  input.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') event.preventDefault();
  });
  const holder = element(
    document,
    'div',
    { class: 'own-field own-search' },
    element(document, 'label', { for: id }, label),
    input,
    offers.list,
    said,
  );
  return { element: holder, input };
}
