import type { Quantity } from '../../../../lib/graph/quantity.ts';
import { type MoveForm, usualLimits } from '../../../solveForm.ts';
import type { NamedQuantity } from '../../../studyNames.ts';
import type { Live } from '../../live.ts';
import { labelledField, optionBoxes, selectField, textField } from '../formField.ts';
import { createInputRow, type InputRow } from '../inputRow.ts';

const ways = { between: 'between two limits', list: 'only these values' } as const;

/** One input that may change: between limits, over a list, or among its ways. */
export function createMoveRow(
  document: Document,
  live: Live,
  form: MoveForm,
  names: () => readonly NamedQuantity[],
  hearer: { removed(): void },
): InputRow {
  return createInputRow(document, live, form, names, {
    label: 'Something that may change',
    fields: (input, typed) => fieldsOf(document, form, input, typed),
    found: (input) => {
      if (input) Object.assign(form, usualLimits(live.graph, input.id), { way: 'between', list: '' });
    },
    removed: hearer.removed,
  });
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
