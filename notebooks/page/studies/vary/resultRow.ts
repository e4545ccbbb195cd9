import type { NamedQuantity } from '../../../studyNames.ts';
import { element, setText } from '../../element.ts';
import { actButton, labelledSearch, searchField } from '../formField.ts';
import type { FormRow } from '../formRows.ts';

/** One result to look at while inputs are varied. */
export function createResultRow(
  document: Document,
  form: { search: string },
  names: () => readonly NamedQuantity[],
  hearer: { chosen(): void; removed(): void },
): FormRow {
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const search = searchField(document, names, form.search, {
    typed: (text) => {
      form.search = text;
      setText(problem, '');
    },
    found: hearer.chosen,
  });
  const row = element(
    document,
    'div',
    { class: 'study-row', role: 'group', 'aria-label': 'A result to look at' },
    labelledSearch(document, 'result', search),
    actButton(document, 'Take out', hearer.removed, { 'aria-label': 'Take out this result' }),
    problem,
  );
  return { element: row, fault: (message) => setText(problem, message), focus: () => search.input.focus() };
}
