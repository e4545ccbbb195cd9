import type { SearchEntry } from '../../search/searchEntry.ts';
import type { FoundGroup } from '../../search/searchIndex.ts';
import { freshId } from '../controls/field.ts';
import { element, setAttributes, setText } from '../element.ts';

/** What the panel asks and does. */
export interface SearchActs {
  /** Called as the panel opens: everything that can be found by then. */
  prepare(): (typed: string) => readonly FoundGroup[];
  /** Goes to what was chosen; `from` is where the focus comes back to. */
  choose(entry: SearchEntry, from: HTMLElement): void;
}

/** The button that opens the search, and the panel below the bar. */
export interface SearchPanel {
  readonly button: HTMLButtonElement;
  readonly element: HTMLElement;
}

/** Makes button and panel; the key / opens it too, outside fields. */
export function createSearchPanel(document: Document, acts: SearchActs): SearchPanel {
  const button = element(
    document,
    'button',
    { type: 'button', class: 'plain', 'aria-expanded': 'false', 'aria-keyshortcuts': '/' },
    'Find',
  );
  const id = freshId();
  const list = element(document, 'div', {
    role: 'listbox',
    id: `${id}-list`,
    class: 'find-list',
    'aria-label': 'What is found',
    hidden: true,
  });
  const field = element(document, 'input', {
    type: 'text',
    id,
    class: 'field-text',
    role: 'combobox',
    'aria-autocomplete': 'list',
    'aria-expanded': 'false',
    'aria-controls': list.id,
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
  });
  const said = element(document, 'p', { class: 'find-said', role: 'status' });
  const panel = element(
    document,
    'section',
    { class: 'find', 'aria-label': 'Find', hidden: true },
    element(document, 'label', { for: id }, 'Find a page, a chart, a number, a word or a lesson'),
    field,
    said,
    list,
  );
  let find: ReturnType<SearchActs['prepare']> | undefined;
  let found: readonly SearchEntry[] = [];
  let at = 0;
  const options = () => [...list.querySelectorAll<HTMLElement>('[role="option"]')];
  const mark = () => {
    for (const [i, option] of options().entries())
      setAttributes(option, { 'aria-selected': String(i === at) });
    setAttributes(field, {
      'aria-activedescendant': found.length > 0 && `${list.id}-${at}`,
      'aria-expanded': String(found.length > 0),
    });
    options()[at]?.scrollIntoView({ block: 'nearest' });
  };
  const search = () => {
    const groups = field.value.trim() === '' ? [] : find!(field.value);
    found = groups.flatMap(({ entries }) => entries);
    at = 0;
    list.replaceChildren(...groupElements(document, list.id, groups, (entry) => choose(entry)));
    list.hidden = found.length === 0;
    list.scrollTop = 0;
    setText(said, findSaid(field.value, found.length));
    mark();
  };
  const open = () => {
    find = acts.prepare();
    panel.hidden = false;
    setAttributes(button, { 'aria-expanded': 'true' });
    field.focus();
    field.select();
    search();
  };
  const close = (back: boolean) => {
    if (panel.hidden) return;
    panel.hidden = true;
    setAttributes(button, { 'aria-expanded': 'false' });
    if (back) button.focus();
  };
  const choose = (entry: SearchEntry) => {
    close(true);
    acts.choose(entry, button);
  };
  button.addEventListener('click', () => (panel.hidden ? open() : close(true)));
  field.addEventListener('input', search);
  panel.addEventListener('keydown', (event) => {
    const { key } = event;
    const step = key === 'ArrowDown' ? 1 : key === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && found.length > 0) {
      event.preventDefault();
      at = (at + step + found.length) % found.length;
      mark();
    } else if (key === 'Enter' && found.length > 0) {
      event.preventDefault();
      choose(found[at]!);
    } else if (key === 'Escape') {
      event.stopPropagation();
      close(true);
    } else if (key === 'Tab') close(false);
  });
  document.addEventListener('pointerdown', ({ target }) => {
    if (!panel.contains(target as Node) && !button.contains(target as Node)) close(false);
  });
  // Another page has come: what was looked for on the last one would only cover it.
  document.defaultView!.addEventListener('hashchange', () => close(false));
  document.addEventListener('keydown', (event) => {
    if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return;
    // Where the bar is away there is nothing to open below it.
    if (isTyping(event.target) || button.offsetParent === null) return;
    event.preventDefault();
    open();
  });
  return { button, element: panel };
}

const isTyping = (target: EventTarget | null) =>
  (target as HTMLElement | null)?.matches?.(
    'input:not([type="range"]), textarea, select, [contenteditable]',
  ) ?? false;

/** What is said of the results; nothing for an empty field. */
function findSaid(typed: string, count: number): string {
  if (typed.trim() === '')
    return 'Arrow keys choose, Enter goes there, Escape closes. The key / opens this too.';
  if (count === 0) return 'Nothing like that here. Try another word, or a part of one.';
  return '';
}

function groupElements(
  document: Document,
  listId: string,
  groups: readonly FoundGroup[],
  choose: (entry: SearchEntry) => void,
): HTMLElement[] {
  let place = 0;
  return groups.map(({ kind, title, entries, more }) => {
    const heading = element(
      document,
      'p',
      { class: 'find-kind', id: `${listId}-${kind}`, role: 'presentation' },
      more === 0 ? title : `${title} (the first ${entries.length} of ${entries.length + more})`,
    );
    const options = entries.map((entry) => {
      const option = element(
        document,
        'div',
        { role: 'option', id: `${listId}-${place++}`, 'aria-selected': 'false' },
        element(document, 'span', {}, entry.name),
        ...(entry.beside === '' ? [] : [' ', element(document, 'small', {}, entry.beside)]),
      );
      option.addEventListener('click', () => choose(entry));
      return option;
    });
    return element(document, 'div', { role: 'group', 'aria-labelledby': heading.id }, heading, ...options);
  });
}
