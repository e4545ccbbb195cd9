import type { Quantity } from '../../../lib/graph/quantity.ts';
import { rangeText } from '../../../lib/graph/shown.ts';
import { formatUnit } from '../../../lib/graph/units.ts';
import { element, setAttributes, setText } from '../element.ts';
import { readingUnit } from './steps.ts';

/** Whether a change ends a movement (one undo) or is on its way. */
export interface Setting {
  readonly final: boolean;
}

/** A control for one input. */
export interface Field {
  readonly element: HTMLElement;
  /** Shows the value of the design; `text` is how to write it, where that is known better than by the value. */
  update(value: unknown, text?: string): void;
  /** Shows a problem that arose elsewhere and names this input, or takes it away. */
  explain(message?: string): void;
  /** Shows what was typed before and not taken, or takes it away where there is none any more. */
  recall?(): void;
  focus(): void;
  /** Lets the slider and the steps of a number follow another usual span, SI; what may be typed stays the same. */
  respan?(low: number, high: number): void;
}

let fieldsMade = 0;

/** An id that no other element of the page has. */
export function freshId(): string {
  fieldsMade += 1;
  return `field-${fieldsMade}`;
}

/** Frame of a field: label, help, place for the control, place for problems. */
export interface FieldFrame {
  readonly element: HTMLElement;
  readonly controlId: string;
  /** Ids of help and problem, for aria-describedby. */
  readonly describedBy: string;
  readonly body: HTMLElement;
  /** A problem of what was typed; hides one from elsewhere while it lasts. */
  refuse(message: string): void;
  accept(): void;
  explain(message?: string): void;
  /** Says of what stands in the field that it does not count yet, or takes that away. */
  wait(message?: string): void;
  readonly refused: () => boolean;
}

/** The frame; `label` is a label, or a legend-like heading where the control is a group. */
export function createFrame(document: Document, input: Quantity, grouped = false): FieldFrame {
  const controlId = freshId();
  const [labelId, helpId, problemId] = [`${controlId}-label`, `${controlId}-help`, `${controlId}-problem`];
  const waitingId = `${controlId}-waiting`;
  const label = grouped
    ? element(document, 'span', { class: 'field-label', id: labelId }, input.name)
    : element(document, 'label', { class: 'field-label', id: labelId, for: controlId }, input.name);
  const body = element(document, 'div', { class: 'field-body' });
  const problem = element(document, 'p', { class: 'problem', id: problemId, 'aria-live': 'polite' });
  const waiting = element(document, 'p', { class: 'field-waiting', id: waitingId });
  const frame = element(
    document,
    'div',
    { class: 'field', 'data-input': input.id },
    label,
    helpNote(document, input, helpId),
    body,
    waiting,
    problem,
  );
  let own: string | undefined;
  let other: string | undefined;
  const show = () => {
    setText(problem, own ?? other ?? '');
    setAttributes(frame, { 'data-problem': own !== undefined || other !== undefined });
  };
  return {
    element: frame,
    controlId,
    describedBy: `${problemId} ${waitingId} ${helpId}`,
    body,
    refuse: (message) => {
      own = message;
      show();
    },
    accept: () => {
      own = undefined;
      show();
    },
    explain: (message) => {
      other = message;
      show();
    },
    wait: (message = '') => setText(waiting, message),
    refused: () => own !== undefined,
  };
}

/** The note behind the question mark: what the input means, the unit of a plain number, the range. */
function helpNote(document: Document, input: Quantity, id: string): HTMLElement {
  const note = element(document, 'p', { class: 'field-help-text', id }, helpText(input));
  const summary = element(
    document,
    'summary',
    { 'aria-label': `About ${input.name}`, title: input.about },
    '?',
  );
  return element(document, 'details', { class: 'field-help' }, summary, note);
}

/** Words of the note: meaning, range and unit. */
export function helpText(input: Quantity): string {
  if (input.kind !== 'number') return input.about;
  const range = `${rangeText(input).replace(/^./, (letter) => letter.toUpperCase())}.`;
  const unit = formatUnit(readingUnit(input));
  return `${input.about} ${range}${unit === '' ? '' : ` A plain number counts in ${unit}; other units may be typed.`}`;
}

/** Runs a change; what it throws is shown at the field. True where it was taken. */
export function tryChange(frame: FieldFrame, change: () => void): boolean {
  try {
    change();
    frame.accept();
    return true;
  } catch (error) {
    frame.refuse((error as Error).message);
    return false;
  }
}
