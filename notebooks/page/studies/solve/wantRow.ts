import type { Outcome } from '../../../../lib/graph/outcome.ts';
import { shownValue } from '../../../../lib/graph/shown.ts';
import type { WantForm } from '../../../solveForm.ts';
import { findNamed, type NamedQuantity } from '../../../studyNames.ts';
import { element, setText } from '../../element.ts';
import {
  actButton,
  labelledField,
  labelledSearch,
  searchField,
  selectField,
  textField,
} from '../formField.ts';
import type { FormRow } from '../formRows.ts';

/** A row of what is wanted. */
export interface WantRow extends FormRow {
  readonly form: WantForm;
  /** Shows the value as the design stands. */
  today(outcome: Outcome | undefined): void;
  /** A weight counts beside others only. */
  others(there: boolean): void;
}

const kinds = { value: 'is', atLeast: 'is at least', atMost: 'is at most', between: 'lies between' } as const;

/** One wanted result: which, how, the value, and its weight among others. */
export function createWantRow(
  document: Document,
  form: WantForm,
  names: () => readonly NamedQuantity[],
  hearer: { chosen(): void; removed(): void },
): WantRow {
  const today = element(document, 'p', { class: 'study-today' });
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const clear = () => setText(problem, '');
  const search = searchField(document, names, form.search, {
    typed: (text) => {
      form.search = text;
      clear();
    },
    found: () => {
      setText(today, '');
      hearer.chosen();
    },
  });
  const value = textField(document, form.value, (text) => {
    form.value = text;
    clear();
  });
  const upper = textField(document, form.upper, (text) => {
    form.upper = text;
    clear();
  });
  const weight = textField(document, form.weight, (text) => {
    form.weight = text;
    clear();
  });
  const upperField = labelledField(document, 'and', upper, 'study-short');
  const weightField = labelledField(document, 'weight', weight, 'study-narrow');
  const showKind = () => {
    upperField.hidden = form.kind !== 'between';
  };
  const kind = selectField(document, kinds, form.kind, (way) => {
    form.kind = way;
    showKind();
    clear();
  });
  showKind();
  const row = element(
    document,
    'div',
    { class: 'study-row', role: 'group', 'aria-label': 'Something wanted' },
    labelledSearch(document, 'result', search),
    labelledField(document, 'wanted', kind),
    labelledField(document, 'value', value, 'study-short'),
    upperField,
    weightField,
    actButton(document, 'Take out', hearer.removed, { 'aria-label': 'Take out this want' }),
    today,
    problem,
  );
  return {
    element: row,
    form,
    fault: (message) => setText(problem, message),
    focus: () => (form.search === '' ? search.input : value).focus(),
    today(outcome) {
      const quantity = findNamed(names(), form.search);
      if (!quantity || !outcome) return setText(today, '');
      const text =
        'problem' in outcome
          ? `No value as the design stands: ${outcome.problem.message}`
          : `Today it is ${shownValue(quantity, outcome)}.`;
      setText(today, text);
    },
    others(there) {
      weightField.hidden = !there;
    },
  };
}
