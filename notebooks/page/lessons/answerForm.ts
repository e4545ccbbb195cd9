import { formatUnit } from '../../../lib/graph/units.ts';
import type { ChoiceTask, NumberTask, Task } from '../../lessons/lesson.ts';
import type { Given } from '../../lessons/progress.ts';
import { element } from '../element.ts';
import type { PlaceHandle } from './placeHandle.ts';

/** The way to answer a task. */
export interface AnswerForm {
  readonly element: HTMLElement;
  /** What is answered now; undefined while there is nothing yet, and then `missing` says what to do. */
  given(): Given | undefined;
  readonly missing: string;
  /** Puts an answer there that was given before. */
  put(given: Given): void;
  focus(): void;
}

/** Characters of a number with its unit. */
const longestAnswer = 100;

/** The form of a task without its buttons; `id` is unique on the page, `handle` the mark on the chart. */
export function createAnswerForm(
  document: Document,
  task: Task,
  id: string,
  handle: PlaceHandle | undefined,
): AnswerForm {
  if (task.kind === 'number') return numberForm(document, task, id);
  if (task.kind === 'choice') return choiceForm(document, task, id);
  return markForm(document, handle!);
}

function numberForm(document: Document, { display }: NumberTask, id: string): AnswerForm {
  const unit = formatUnit(display);
  const hint = element(
    document,
    'p',
    { class: 'lesson-hint', id: `${id}-hint` },
    unit === ''
      ? 'A number without a unit.'
      : `A bare number counts in ${unit}; another unit may stand behind it.`,
  );
  const text = element(document, 'input', {
    type: 'text',
    id,
    class: 'field-text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    maxlength: longestAnswer,
    'aria-describedby': hint.id,
  });
  const field = element(document, 'div', { class: 'lesson-number' }, text);
  if (unit !== '')
    field.append(element(document, 'span', { class: 'lesson-unit', 'aria-hidden': 'true' }, unit));
  return {
    element: element(
      document,
      'div',
      { class: 'lesson-field' },
      element(document, 'label', { for: id }, 'Your answer'),
      field,
      hint,
    ),
    given: () => (text.value.trim() === '' ? undefined : text.value),
    missing:
      unit === '' ? 'Type a number first.' : `Type a number first, in ${unit} or another unit of its kind.`,
    put: (given) => {
      text.value = String(given);
    },
    focus: () => text.select(),
  };
}

function choiceForm(document: Document, { options }: ChoiceTask, id: string): AnswerForm {
  const radios = Object.keys(options).map((value) =>
    element(document, 'input', { type: 'radio', name: id, value }),
  );
  const labels = Object.values(options).map((words, i) =>
    element(document, 'label', { class: 'lesson-option' }, radios[i]!, element(document, 'span', {}, words)),
  );
  const legend = element(document, 'legend', {}, 'Your answer');
  const chosen = () => radios.find(({ checked }) => checked);
  return {
    element: element(document, 'fieldset', { class: 'lesson-field' }, legend, ...labels),
    given: () => chosen()?.value,
    missing: 'Choose one first.',
    put: (given) => {
      for (const radio of radios) radio.checked = radio.value === given;
    },
    focus: () => (chosen() ?? radios[0])?.focus(),
  };
}

/** Marks the options of a form that were not right. */
export function markTried(document: Document, form: HTMLElement, tries: readonly Given[]): void {
  for (const radio of form.querySelectorAll<HTMLInputElement>('input[type="radio"]')) {
    const words = radio.nextElementSibling!;
    if (!tries.includes(radio.value) || words.querySelector('small')) continue;
    words.append(element(document, 'small', { class: 'lesson-tried' }, ' (tried)'));
  }
}

function markForm(document: Document, handle: PlaceHandle): AnswerForm {
  return {
    element: element(
      document,
      'p',
      { class: 'lesson-hint' },
      'Click or drag on the chart. By keys: Tab leads to the chart, the arrow keys move your mark, Enter answers.',
    ),
    given: handle.chosen,
    missing: 'Put your mark on the chart first.',
    put: (given) => handle.put(Number(given)),
    focus: handle.focus,
  };
}
