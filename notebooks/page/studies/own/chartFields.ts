import type { NumberInput } from '../../../../lib/graph/quantity.ts';
import { Problem } from '../../../../lib/problem.ts';
import { isNumberResult } from '../../../studyNames.ts';
import { amountText, readAmount } from '../../../typedAmount.ts';
import { usualAxis, usualCounts } from '../../../varyForm.ts';
import { element } from '../../element.ts';
import { createChosenList } from './chosenList.ts';
import { labelledField, textInput } from './labelledField.ts';
import { captionFields, type FieldsOf } from './pieceParts.ts';

/** Curves of one piece, and values of each; so many signs of an end. */
const most = { results: 6, values: 200, signs: 40 } as const;

/** Results over an input: which, and from where to where. */
export const chartFields: FieldsOf<'chart'> = (context, start, changed) => {
  const { document, live } = context;
  const inputOf = () => live.graph.quantities.get(over.ids()[0] ?? '') as NumberInput | undefined;
  const [from, to] = [textInput(document, most.signs), textInput(document, most.signs)];
  const count = textInput(document, 4);
  const by = element(
    document,
    'select',
    { class: 'field-list' },
    element(document, 'option', { value: 'steps' }, 'equal steps'),
    element(document, 'option', { value: 'factors' }, 'equal factors'),
  );
  let before = start?.over.id;
  const over = createChosenList(context, start ? [start.over.id] : [], {
    label: 'Search for the input that the chart runs over',
    of: ({ kind }) => kind === 'number',
    most: 1,
    changed() {
      const input = inputOf();
      if (input && input.id !== before) {
        const usual = usualAxis(live.graph, input.id);
        from.value = usual.from;
        to.value = usual.to;
      }
      before = input?.id;
      changed();
    },
  });
  const results = createChosenList(context, start?.ids ?? [], {
    label: 'Search for a number to draw',
    of: isNumberResult,
    most: most.results,
    changed,
  });
  const input = inputOf();
  if (start && input) {
    from.value = amountText(input, start.over.from);
    to.value = amountText(input, start.over.to);
  }
  count.value = start ? String(start.over.count) : usualCounts.one;
  by.value = start?.over.by ?? 'steps';
  for (const field of [from, to, count]) field.addEventListener('input', changed);
  by.addEventListener('change', changed);
  const caption = captionFields(context, start, changed);
  const readCount = () => {
    const number = Number(count.value.trim());
    if (Number.isInteger(number) && number >= 2 && number <= most.values) return number;
    throw new Problem(
      'impossible',
      `‘${count.value.trim()}’ values do not go; type a whole number from 2 to ${most.values}.`,
    );
  };
  return {
    elements: [
      results.element,
      over.element,
      element(
        document,
        'div',
        { class: 'own-ends' },
        labelledField(document, 'From', from),
        labelledField(document, 'To', to),
        labelledField(document, 'Values', count),
        labelledField(document, 'In', by),
      ),
      ...caption.elements,
    ],
    read() {
      const ids = results.ids();
      if (ids.length === 0) throw new Problem('absent', 'Choose a number to draw first.');
      const chosen = inputOf();
      if (!chosen) throw new Problem('absent', 'Choose the input that the chart runs over.');
      const ends = { from: readAmount(chosen, from.value), to: readAmount(chosen, to.value) };
      if (ends.from >= ends.to)
        throw new Problem('impossible', 'The first end has to be below the second one.');
      if (by.value === 'factors' && ends.from <= 0)
        throw new Problem('impossible', 'Equal factors need both ends above 0; take equal steps instead.');
      const axis = { id: chosen.id, unit: chosen.unit, ...ends, count: readCount(), by: by.value as 'steps' };
      return { kind: 'chart', over: axis, ids, ...caption.read() };
    },
    focus: () => results.input.focus(),
  };
};
