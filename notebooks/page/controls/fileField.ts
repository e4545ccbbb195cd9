import type { FileInput } from '../../../lib/graph/quantity.ts';
import { element, setAttributes, setText } from '../element.ts';
import { createFrame, type Field } from './field.ts';

/** Reads a chosen file and sets the input; throws, or rejects with, a Problem that says why it cannot be read. */
export type TakeFile = (file: File) => void | Promise<void>;

export interface FileFieldOptions {
  /** Kinds of file offered, as in the `accept` attribute, e.g. `.png,.tif`. */
  readonly accept?: string;
  /** Takes the file out again; without it there is no button for that. */
  readonly onClear?: () => void;
}

/**
 * A place to choose a file or drop one. `update(value, text)` shows `text` (name and what was read); a value without
 * text shows its own `name`, null that there is none.
 */
export function createFileField(
  document: Document,
  input: FileInput,
  onFile: TakeFile,
  options: FileFieldOptions = {},
): Field {
  const frame = createFrame(document, input);
  const picker = element(document, 'input', {
    type: 'file',
    id: frame.controlId,
    class: 'off-screen',
    accept: options.accept,
    'aria-describedby': `${frame.controlId}-name ${frame.describedBy}`,
  });
  const name = element(document, 'span', {
    class: 'field-file-name',
    id: `${frame.controlId}-name`,
    'aria-live': 'polite',
  });
  const clear = element(
    document,
    'button',
    { type: 'button', class: 'plain', hidden: true, 'aria-label': `Take out the ${input.name}` },
    'Take out',
  );
  const hint = element(document, 'span', { class: 'field-hint' }, 'or drop a file here');
  const choose = element(document, 'label', { class: 'field-choose', for: frame.controlId }, 'Choose a file');
  const zone = element(document, 'div', { class: 'field-drop' }, picker, choose, hint, name, clear);
  frame.body.append(zone);

  const take = async (file: File) => {
    setAttributes(zone, { 'aria-busy': 'true' });
    setText(name, `Reading ${file.name} …`);
    try {
      await onFile(file);
      frame.accept();
    } catch (error) {
      frame.refuse((error as Error).message);
    }
    setAttributes(zone, { 'aria-busy': undefined });
    setText(name, shown);
  };
  let shown = '';
  const update = (value: unknown, text?: string) => {
    shown = text ?? nameOf(value);
    setText(name, shown);
    clear.hidden = value === null || options.onClear === undefined;
    frame.accept();
  };
  picker.addEventListener('change', () => {
    const file = picker.files?.[0];
    picker.value = '';
    if (file) void take(file);
  });
  clear.addEventListener('click', () => options.onClear?.());
  acceptDrops(zone, (file) => void take(file));
  update(null);
  return { element: frame.element, update, explain: frame.explain, focus: () => picker.focus() };
}

function nameOf(value: unknown): string {
  if (value === null) return 'No file yet.';
  const name = (value as { readonly name?: unknown }).name;
  return typeof name === 'string' ? name : 'A file has been read.';
}

/** Lets a file be dropped on an element; `data-over` marks it while one is above. */
export function acceptDrops(zone: HTMLElement, onFile: (file: File) => void): void {
  const over = (event: DragEvent) => {
    event.preventDefault();
    zone.setAttribute('data-over', '');
  };
  zone.addEventListener('dragenter', over);
  zone.addEventListener('dragover', over);
  zone.addEventListener('dragleave', () => zone.removeAttribute('data-over'));
  zone.addEventListener('drop', (event) => {
    event.preventDefault();
    zone.removeAttribute('data-over');
    const file = event.dataTransfer?.files[0];
    if (file) onFile(file);
  });
}
