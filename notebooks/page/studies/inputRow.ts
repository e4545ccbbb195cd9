import type { Quantity } from '../../../lib/graph/quantity.ts';
import { rangeText, shownValue } from '../../../lib/graph/shown.ts';
import { findNamed, type NamedQuantity } from '../../studyNames.ts';
import { element, setText } from '../element.ts';
import type { Live } from '../live.ts';
import { actButton, labelledSearch, searchField } from './formField.ts';
import type { FormRow } from './formRows.ts';

/** A row of a form about one input, which is searched for. */
export interface InputRow extends FormRow {
  /** Shows what it holds anew. */
  refresh(): void;
  /** Follows a change of the design. */
  follow(): void;
}

/** What is special about a row of one form. */
interface InputRowParts {
  /** Name of the row as a whole. */
  readonly label: string;
  /** Fields for the input that stands in it; `typed` is to be called when one changes. */
  fields(input: Quantity | undefined, typed: () => void): readonly HTMLElement[];
  /** Another input stands in it, or none; the fields are made after. */
  found(input: Quantity | undefined): void;
  removed(): void;
}

/** An input with its fields, what it is today, and what is wrong with it. */
export function createInputRow(
  document: Document,
  live: Live,
  form: { search: string },
  names: () => readonly NamedQuantity[],
  { label, fields, found, removed }: InputRowParts,
): InputRow {
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const today = element(document, 'p', { class: 'study-today' });
  const details = element(document, 'div', { class: 'study-details' });
  const clear = () => setText(problem, '');
  const standing = () => findNamed(names(), form.search);
  const follow = () => {
    const input = standing();
    setText(today, input ? standsAt(live, input) : '');
  };
  const refresh = () => {
    details.replaceChildren(...fields(standing(), clear));
    follow();
  };
  const search = searchField(document, names, form.search, {
    typed: (text) => {
      form.search = text;
      clear();
    },
    found: (input) => {
      found(input);
      refresh();
    },
  });
  refresh();
  const row = element(
    document,
    'div',
    { class: 'study-row', role: 'group', 'aria-label': label },
    labelledSearch(document, 'input', search),
    details,
    actButton(document, 'Take out', removed, { 'aria-label': 'Take out this input' }),
    today,
    problem,
  );
  const fault = (message: string) => setText(problem, message);
  return { element: row, fault, focus: () => search.input.focus(), refresh, follow };
}

/** Today's value and the possible ones. */
function standsAt(live: Live, input: Quantity): string {
  const now = `Today it is ${shownValue(input, { value: live.state().inputs[input.id] })}`;
  return input.kind === 'number' ? `${now}; possible is ${rangeText(input)}.` : `${now}.`;
}
