import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { rangeText, shownValue } from '../../../../lib/graph/shown.ts';
import { type MoveForm, usualLimits } from '../../../solveForm.ts';
import { findNamed, type NamedQuantity } from '../../../studyNames.ts';
import { element, setText } from '../../element.ts';
import type { Live } from '../../live.ts';
import {
  actButton,
  labelledField,
  labelledSearch,
  optionBoxes,
  searchField,
  selectField,
  textField,
} from '../formField.ts';
import type { FormRow } from '../formRows.ts';

const ways = { between: 'between two limits', list: 'only these values' } as const;

/** One input that may change: between limits, over a list, or among its ways. */
export function createMoveRow(
  document: Document,
  live: Live,
  form: MoveForm,
  names: () => readonly NamedQuantity[],
  hearer: { removed(): void },
): FormRow {
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const today = element(document, 'p', { class: 'study-today' });
  const clear = () => setText(problem, '');
  const details = element(document, 'div', { class: 'study-details' });
  const sayToday = (input: Quantity | undefined) => setText(today, input ? standsAt(live, input) : '');
  const show = (input: Quantity | undefined) => {
    details.replaceChildren(...fieldsOf(document, form, input, clear));
    sayToday(input);
  };
  const search = searchField(document, names, form.search, {
    typed: (text) => {
      form.search = text;
      clear();
    },
    found: (input) => {
      if (input) Object.assign(form, usualLimits(live.graph, input.id), { way: 'between', list: '' });
      show(input);
    },
  });
  show(findNamed(names(), form.search));
  const row = element(
    document,
    'div',
    { class: 'study-row', role: 'group', 'aria-label': 'Something that may change' },
    labelledSearch(document, 'input', search),
    details,
    actButton(document, 'Take out', hearer.removed, { 'aria-label': 'Take out this input' }),
    today,
    problem,
  );
  return {
    element: row,
    fault: (message) => setText(problem, message),
    focus: () => search.input.focus(),
    follow: () => sayToday(findNamed(names(), form.search)),
  };
}

/** Today's value and the possible ones. */
export function standsAt(live: Live, input: Quantity): string {
  const now = `Today it is ${shownValue(input, { value: live.state().inputs[input.id] })}`;
  return input.kind === 'number' ? `${now}; possible is ${rangeText(input)}.` : `${now}.`;
}

function fieldsOf(
  document: Document,
  form: MoveForm,
  input: Quantity | undefined,
  clear: () => void,
): HTMLElement[] {
  if (!input) return [];
  if (input.kind === 'choice') return [optionBoxes(document, form, input, clear)];
  const write = (key: 'from' | 'to' | 'list') => (text: string) => {
    form[key] = text;
    clear();
  };
  const from = labelledField(document, 'from', textField(document, form.from, write('from')), 'study-short');
  const to = labelledField(document, 'to', textField(document, form.to, write('to')), 'study-short');
  const values = textField(document, form.list, write('list'));
  const list = labelledField(document, 'values, with semicolons between', values, 'study-wide');
  const showWay = () => {
    list.hidden = form.way !== 'list';
    from.hidden = form.way === 'list';
    to.hidden = form.way === 'list';
  };
  const way = selectField(document, ways, form.way, (chosen) => {
    form.way = chosen;
    showWay();
    clear();
  });
  showWay();
  return [labelledField(document, 'may be', way), from, to, list];
}
