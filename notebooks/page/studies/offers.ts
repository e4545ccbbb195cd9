import type { Quantity } from '../../../lib/graph/quantity.ts';
import { kindWords, searchQuantities } from '../../quantitySearch.ts';
import { freshId } from '../controls/field.ts';
import { element, setAttributes } from '../element.ts';

/** As many are offered at a time. */
const mostOffered = 8;

/** The list of quantities that stands below a search field while one types. */
export interface Offers {
  /** To be put behind the field, both in a place of position. */
  readonly list: HTMLElement;
  /** How many are offered. */
  count(): number;
  /** Puts the list away. */
  close(): void;
}

/**
 * Offers quantities by the words in a field: arrow keys move through them, Enter takes one, Escape puts the list away.
 * What is typed is not changed here; `take` hears of the one that is chosen. A field that `holds` a name has chosen with
 * its last letter.
 */
export function attachOffers(
  document: Document,
  input: HTMLInputElement,
  quantities: () => Iterable<Quantity>,
  take: (quantity: Quantity) => void,
  { holds = false } = {},
): Offers {
  const list = element(document, 'ul', {
    role: 'listbox',
    id: freshId(),
    class: 'offers',
    'aria-label': 'What is found',
    hidden: true,
  });
  setAttributes(input, {
    role: 'combobox',
    'aria-autocomplete': 'list',
    'aria-expanded': 'false',
    'aria-controls': list.id,
    autocomplete: 'off',
    spellcheck: 'false',
    placeholder: 'a word of its name',
  });
  let found: readonly Quantity[] = [];
  let at = -1;
  const show = (open: boolean) => {
    list.hidden = !open;
    input.setAttribute('aria-expanded', String(open));
    for (const [i, option] of [...list.children].entries())
      setAttributes(option, { 'aria-selected': String(i === at) });
    if (open && at >= 0) input.setAttribute('aria-activedescendant', `${list.id}-${at}`);
    else input.removeAttribute('aria-activedescendant');
    if (open) list.children[at]?.scrollIntoView({ block: 'nearest' });
  };
  const close = () => {
    [found, at] = [[], -1];
    show(false);
  };
  const choose = (quantity: Quantity) => {
    close();
    take(quantity);
  };
  const search = () => {
    found = searchQuantities(quantities(), input.value, mostOffered);
    // The list would only cover what comes next.
    if (holds && isWhole(input.value, found)) return close();
    at = found.length > 0 ? 0 : -1;
    list.replaceChildren(...found.map((one, i) => offered(document, `${list.id}-${i}`, one, choose)));
    show(found.length > 0);
  };
  input.addEventListener('input', search);
  input.addEventListener('blur', () => show(false));
  input.addEventListener('keydown', (event) => {
    const { key } = event;
    const marked = list.hidden ? undefined : found[at];
    if (key === 'Enter' && marked) {
      event.preventDefault();
      choose(marked);
    } else if (key === 'Escape' && !list.hidden) {
      event.stopPropagation();
      show(false);
    } else if ((key === 'ArrowDown' || key === 'ArrowUp') && found.length > 0) {
      event.preventDefault();
      if (!list.hidden) at = (at + (key === 'ArrowDown' ? 1 : -1) + found.length) % found.length;
      show(true);
    }
  });
  return { list, count: () => found.length, close };
}

/** Whether a text is the name or the id of one quantity among those found. */
function isWhole(text: string, found: readonly Quantity[]): boolean {
  const typed = text.trim().toLowerCase();
  const same = found.filter(({ name, id }) => name.toLowerCase() === typed || id.toLowerCase() === typed);
  return same.length === 1;
}

function offered(document: Document, id: string, quantity: Quantity, choose: (quantity: Quantity) => void) {
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
    choose(quantity);
  });
  return option;
}
