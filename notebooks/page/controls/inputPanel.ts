import type { FileInput, InputQuantity, ListInput } from '../../../lib/graph/quantity.ts';
import type { Patch } from '../../../lib/graph/state.ts';
import { element } from '../element.ts';
import { createChoiceField } from './choiceField.ts';
import type { Drafts } from './drafts.ts';
import { type Field, freshId, type Setting } from './field.ts';
import { createFileField } from './fileField.ts';
import type { SetNumber } from './numberEntry.ts';
import { createNumberField } from './numberField.ts';

/** What a panel does with what a person sets. */
export interface PanelActions {
  /** One write; throws a Problem, and then nothing has changed. */
  set(patch: Patch, setting: Setting): void;
  /** Reads files for that input, several only for a list, and sets it in one write. */
  takeFiles?(input: FileInput | ListInput, files: readonly File[]): void | Promise<void>;
  /** Kinds of file for that input, as in the `accept` attribute. */
  accept?(input: FileInput | ListInput): string | undefined;
  /** Whether that input takes a table, which may be pasted. */
  pastes?(input: FileInput | ListInput): boolean;
  /** Where typed numbers wait until they are taken. */
  readonly drafts?: Drafts;
}

/** Inputs under a heading. */
export interface InputPanel {
  readonly element: HTMLElement;
  /** Fields by id of their input. */
  readonly fields: ReadonlyMap<string, Field>;
  /** Shows or hides the field of an input that does not count at present. */
  setShown(id: string, shown: boolean): void;
}

/** The field for an input, whatever its kind. */
export function createField(document: Document, input: InputQuantity, actions: PanelActions): Field {
  if (input.kind === 'number') {
    const set: SetNumber = (value, setting) => actions.set({ [input.id]: value }, setting);
    return createNumberField(document, input, set, actions.drafts);
  }
  if (input.kind === 'choice') {
    return createChoiceField(document, input, (value) => actions.set({ [input.id]: value }, { final: true }));
  }
  const accept = actions.accept?.(input);
  return createFileField(document, input, (files) => actions.takeFiles?.(input, files), {
    onClear: () => actions.set({ [input.id]: input.initial }, { final: true }),
    ...(accept === undefined ? {} : { accept }),
    pastes: actions.pastes?.(input) ?? false,
  });
}

/** A panel of fields in a compact grid; the first field gets the focus through `fields`. */
export function createInputPanel(
  document: Document,
  heading: string,
  inputs: readonly InputQuantity[],
  actions: PanelActions,
): InputPanel {
  const headingId = `${freshId()}-heading`;
  const fields = new Map(inputs.map((input) => [input.id, createField(document, input, actions)]));
  const grid = element(
    document,
    'div',
    { class: 'fields' },
    ...[...fields.values()].map((field) => field.element),
  );
  const title = element(document, 'h2', { class: 'inputs-heading', id: headingId }, heading);
  return {
    element: element(document, 'section', { class: 'inputs', 'aria-labelledby': headingId }, title, grid),
    fields,
    setShown: (id, shown) => {
      const field = fields.get(id);
      if (field) field.element.hidden = !shown;
    },
  };
}
