import type { Quantity } from '../../../../lib/graph/quantity.ts';
import type { NamedQuantity } from '../../../studyNames.ts';
import { type AxisForm, usualAxis } from '../../../varyForm.ts';
import type { Live } from '../../live.ts';
import { labelledField, optionBoxes, selectField, textField } from '../formField.ts';
import { createInputRow, type InputRow } from '../inputRow.ts';

const ways = { steps: 'equal steps', factors: 'equal factors' } as const;

/** A row of an input that is varied. */
export interface AxisRow extends InputRow {
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
  let map = false;
  const row = createInputRow(document, live, form, names, {
    label: 'An input that is varied',
    fields: (input, typed) => fieldsOf(document, form, input, map, typed),
    found: (input) => {
      if (input) Object.assign(form, usualAxis(live.graph, input.id), { by: 'steps' });
      hearer.chosen();
    },
    removed: hearer.removed,
  });
  return {
    ...row,
    onMap(there) {
      if (there === map) return;
      map = there;
      row.refresh();
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
