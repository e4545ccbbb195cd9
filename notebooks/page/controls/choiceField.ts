import type { ChoiceInput } from '../../../lib/graph/quantity.ts';
import { element, setAttributes } from '../element.ts';
import { createFrame, type Field, type FieldFrame, tryChange } from './field.ts';

/** Takes a new choice; throws a Problem that says why it cannot be, and then nothing has changed. */
export type SetChoice = (value: string) => void;

/** Up to this many ways stand side by side; more go into a list. */
const mostRadios = 3;

/** A choice among named ways: radio buttons for two or three, a list for more. */
export function createChoiceField(document: Document, input: ChoiceInput, onSet: SetChoice): Field {
  const options = Object.entries(input.options);
  const few = options.length <= mostRadios;
  const frame = createFrame(document, input, few);
  const control = few ? createRadios(document, frame, options) : createList(document, frame, options);
  frame.body.append(control.element);
  let value: string = input.initial;
  control.show(value);
  control.element.addEventListener('change', () => {
    const before = value;
    value = control.chosen();
    if (!tryChange(frame, () => onSet(value))) value = before;
    control.show(value);
  });
  return {
    element: frame.element,
    update: (next) => {
      value = next as string;
      frame.accept();
      control.show(value);
    },
    explain: frame.explain,
    focus: control.focus,
  };
}

interface ChoiceControl {
  readonly element: HTMLElement;
  chosen(): string;
  show(value: string): void;
  focus(): void;
}

type Options = readonly (readonly [value: string, words: string])[];

function createRadios(document: Document, frame: FieldFrame, options: Options): ChoiceControl {
  const radios = options.map(([value]) =>
    element(document, 'input', { type: 'radio', name: frame.controlId, value }),
  );
  const labels = options.map(([, words], i) =>
    element(document, 'label', { class: 'field-option' }, radios[i]!, element(document, 'span', {}, words)),
  );
  const group = element(
    document,
    'div',
    {
      role: 'radiogroup',
      class: 'field-options',
      'aria-labelledby': `${frame.controlId}-label`,
      'aria-describedby': frame.describedBy,
    },
    ...labels,
  );
  const chosen = () => radios.find((radio) => radio.checked) ?? radios[0]!;
  return {
    element: group,
    chosen: () => chosen().value,
    show: (value) => {
      for (const radio of radios) radio.checked = radio.value === value;
    },
    focus: () => chosen().focus(),
  };
}

function createList(document: Document, frame: FieldFrame, options: Options): ChoiceControl {
  const items = options.map(([value, words]) => element(document, 'option', { value }, words));
  const list = element(
    document,
    'select',
    { id: frame.controlId, class: 'field-list', 'aria-describedby': frame.describedBy },
    ...items,
  );
  return {
    element: list,
    chosen: () => list.value,
    show: (value) => {
      for (const item of items) setAttributes(item, { selected: item.value === value });
      list.value = value;
    },
    focus: () => list.focus(),
  };
}
