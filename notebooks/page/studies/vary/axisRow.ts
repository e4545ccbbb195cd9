import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { findNamed, type NamedQuantity } from '../../../studyNames.ts';
import { type AxisForm, usualAxis } from '../../../varyForm.ts';
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
import { standsAt } from '../solve/moveRow.ts';

const ways = { steps: 'equal steps', factors: 'equal factors' } as const;

/** A row of an input that is varied. */
export interface AxisRow extends FormRow {
  /** Shows what it holds anew. */
  refresh(): void;
  /** On a map both inputs go in equal steps. */
  onMap(there: boolean): void;
}

/** One input that is varied: a number from one end to the other, or a choice over its ways. */
export function createAxisRow(
  document: Document,
  live: Live,
  form: AxisForm,
  names: () => readonly NamedQuantity[],
  hearer: { chosen(): void; removed(): void },
): AxisRow {
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const today = element(document, 'p', { class: 'study-today' });
  const details = element(document, 'div', { class: 'study-details' });
  const clear = () => setText(problem, '');
  const sayToday = (input: Quantity | undefined) => setText(today, input ? standsAt(live, input) : '');
  let map = false;
  const show = (input: Quantity | undefined) => {
    details.replaceChildren(...fieldsOf(document, form, input, map, clear));
    sayToday(input);
  };
  const search = searchField(document, names, form.search, {
    typed: (text) => {
      form.search = text;
      clear();
    },
    found: (input) => {
      if (input) Object.assign(form, usualAxis(live.graph, input.id), { by: 'steps' });
      show(input);
      hearer.chosen();
    },
  });
  const refresh = () => show(findNamed(names(), form.search));
  refresh();
  const row = element(
    document,
    'div',
    { class: 'study-row', role: 'group', 'aria-label': 'An input that is varied' },
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
    refresh,
    onMap(there) {
      if (there === map) return;
      map = there;
      refresh();
    },
  };
}

function fieldsOf(
  document: Document,
  form: AxisForm,
  input: Quantity | undefined,
  map: boolean,
  clear: () => void,
): HTMLElement[] {
  if (!input) return [];
  if (input.kind === 'choice') return [optionBoxes(document, form, input, clear)];
  const field = (words: string, key: 'from' | 'to' | 'count', width: string) => {
    const text = textField(document, form[key], (typed) => {
      form[key] = typed;
      clear();
    });
    return labelledField(document, words, text, width);
  };
  const way = selectField(document, ways, form.by, (chosen) => {
    form.by = chosen;
    clear();
  });
  return [
    field('from', 'from', 'study-short'),
    field('to', 'to', 'study-short'),
    field('values', 'count', 'study-narrow'),
    ...(map ? [] : [labelledField(document, 'in', way)]),
  ];
}
