import type { LinkedRow } from '../../words/linkedRows.ts';
import { bareSaid, readingSaid, readRow, rowText } from '../../words/linkedRows.ts';
import { freshId } from '../controls/field.ts';
import { element, setAttributes, setText } from '../element.ts';
import { mathElement } from '../proseView.ts';

/** What the rows show, and what becomes of a number that was typed; SI. */
export interface LinkedNumbers<K extends string> {
  values(): Readonly<Record<K, number>>;
  /** Throws a Problem for what cannot be; nothing has changed then. */
  set(key: K, value: number): void;
}

/** Fields of which each follows the others while one is typed in; a name, the field, and where it is used. */
export function createLinkedRows<K extends string>(
  document: Document,
  rows: readonly LinkedRow<K>[],
  numbers: LinkedNumbers<K>,
): { readonly element: HTMLElement; refresh(): void } {
  const made = rows.map((row) => createRow(document, row, numbers, (own) => refresh(own)));
  const refresh = (typing?: LinkedRow<K>) => {
    const values = numbers.values();
    for (const { row, show } of made) if (row !== typing) show(values[row.key]);
  };
  refresh();
  const holder = element(document, 'div', { class: 'linked-rows' }, ...made.map((one) => one.element));
  return { element: holder, refresh };
}

function createRow<K extends string>(
  document: Document,
  row: LinkedRow<K>,
  numbers: LinkedNumbers<K>,
  changed: (own?: LinkedRow<K>) => void,
) {
  const id = freshId();
  const field = element(document, 'input', {
    type: 'text',
    id,
    class: 'field-text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    'aria-describedby': `${id}-about ${id}-problem`,
  });
  const problem = element(document, 'p', { class: 'linked-told', id: `${id}-problem`, role: 'status' });
  let shown = '';
  /** Tells what is wrong with what was typed, or how it was read. */
  const say = (text: string, wrong = false) => {
    setText(problem, text);
    problem.classList.toggle('problem', wrong);
    setAttributes(field, { 'aria-invalid': wrong && 'true' });
  };
  const show = (value: number) => {
    shown = rowText(row, value);
    if (field.value !== shown) field.value = shown;
    say('');
  };
  /** Takes what stands in the field; one that is left as it was stays. */
  const take = (final: boolean) => {
    if (final && field.value === shown) return say('');
    try {
      const text = field.value;
      numbers.set(row.key, readRow(row, text, shown));
      changed(final ? undefined : row);
      say(readingSaid(row, text, numbers.values()[row.key]));
    } catch (error) {
      // While one types, much is not a number yet.
      say(final ? (error as Error).message : '', final);
    }
  };
  field.addEventListener('input', () => take(false));
  field.addEventListener('change', () => take(true));
  field.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') take(true);
    else if (event.key === 'Escape') show(numbers.values()[row.key]);
  });
  const label = element(document, 'label', { for: id }, row.label);
  return {
    row,
    show,
    element: element(
      document,
      'div',
      { class: 'linked-row' },
      element(document, 'div', { class: 'linked-name' }, label, ' ', mathElement(document, row.symbol)),
      field,
      element(document, 'p', { class: 'linked-about', id: `${id}-about` }, `${row.about} ${bareSaid(row)}`),
      problem,
    ),
  };
}
