import type { FileInput, ListInput } from '../../../lib/graph/quantity.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import { element, setAttributes, setText } from '../element.ts';
import { createFrame, type Field } from './field.ts';
import { createPasteTable } from './pasteTable.ts';

/** Reads chosen files and sets the input; throws, or rejects with, a Problem that says why one cannot be read. */
export type TakeFiles = (files: readonly File[]) => void | Promise<void>;

export interface FileFieldOptions {
  /** Kinds of file offered, as in the `accept` attribute, e.g. `.png,.tif`. */
  readonly accept?: string;
  /** Takes the file out again; without it there is no button for that. */
  readonly onClear?: () => void;
  /** What is given is a table, which may be pasted too. */
  readonly pastes?: boolean;
}

/**
 * A place to choose a file or drop one; several at once for a list. `update(value, text)` shows `text` (name and what was read); a value without
 * text shows its own `name`, null that there is none.
 */
export function createFileField(
  document: Document,
  input: FileInput | ListInput,
  onFiles: TakeFiles,
  options: FileFieldOptions = {},
): Field {
  const frame = createFrame(document, input);
  const several = input.kind === 'list';
  const picker = element(document, 'input', {
    type: 'file',
    id: frame.controlId,
    class: 'off-screen',
    accept: options.accept,
    multiple: several,
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
  const hint = element(
    document,
    'span',
    { class: 'field-hint' },
    several ? 'or drop them here' : 'or drop a file here',
  );
  const choose = element(
    document,
    'label',
    { class: 'field-choose', for: frame.controlId },
    several ? 'Add files' : 'Choose a file',
  );
  const zone = element(document, 'div', { class: 'field-drop' }, picker, choose, hint, name, clear);
  frame.body.append(zone);

  const take = async (files: readonly File[]) => {
    setAttributes(zone, { 'aria-busy': 'true' });
    setText(name, `Reading ${files.map((file) => file.name).join(', ')} …`);
    try {
      await onFiles(files);
      frame.accept();
    } catch (error) {
      frame.refuse((error as Error).message);
    }
    setAttributes(zone, { 'aria-busy': undefined });
    setText(name, shown);
    return !frame.refused();
  };
  if (options.pastes)
    frame.body.append(
      createPasteTable(document, { describedBy: frame.describedBy, name: input.name }, (file) =>
        take([file]),
      ),
    );
  let shown = '';
  const update = (value: unknown, text?: string) => {
    shown = text ?? (several ? shownValue(input, { value }) : nameOf(value));
    setText(name, shown);
    const empty = value === null || (Array.isArray(value) && value.length === 0);
    clear.hidden = empty || options.onClear === undefined;
    frame.accept();
  };
  picker.addEventListener('change', () => {
    const files = [...(picker.files ?? [])];
    picker.value = '';
    if (files.length > 0) void take(files);
  });
  clear.addEventListener('click', () => options.onClear?.());
  acceptDrops(zone, (file, all) => void take(several ? all : [file]));
  update(input.initial);
  return { element: frame.element, update, explain: frame.explain, focus: () => picker.focus() };
}

function nameOf(value: unknown): string {
  if (value === null) return 'No file yet.';
  const name = (value as { readonly name?: unknown }).name;
  return typeof name === 'string' ? name : 'A file has been read.';
}

/** Lets files be dropped on an element, `file` the first of `all`; `data-over` marks it while one is above. */
export function acceptDrops(zone: HTMLElement, onFile: (file: File, all: readonly File[]) => void): void {
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
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files[0]) onFile(files[0], files);
  });
}
