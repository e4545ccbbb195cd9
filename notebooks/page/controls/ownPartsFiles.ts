import type { PartKind } from '../../../lib/design/ownParts.ts';
import { type PartsFile, readPartsFile, writePartsFile } from '../../../lib/design/ownPartsFile.ts';
import { type MergedParts, mergeParts, type OwnParts } from '../../../lib/design/ownPartsList.ts';
import { readPartsTable } from '../../../lib/design/ownPartsTable.ts';
import { element } from '../element.ts';
import type { OwnPartsStore } from '../ownPartsStore.ts';
import { freshId } from './field.ts';
import { partWords } from './ownPartsChoice.ts';

/** Hands a text to the person as a file of that name. */
export type SaveText = (name: string, text: string) => void;

/** Runs what may throw a Problem, and shows that, or the words that it returns. */
export type Attempt = (act: () => string | Promise<string>) => Promise<void>;

/** Buttons for files. */
export interface OwnPartsFiles {
  readonly element: HTMLElement;
  /** Follows the list. */
  show(): void;
}

/** Save the list to a file, open one from a file. */
export function createOwnPartsFiles(
  document: Document,
  kind: PartKind,
  store: OwnPartsStore,
  save: SaveText,
  attempt: Attempt,
): OwnPartsFiles {
  const id = freshId();
  const saving = element(document, 'button', { type: 'button', class: 'plain' }, 'Save the list to a file');
  const picker = element(document, 'input', {
    type: 'file',
    id,
    class: 'off-screen',
    accept: '.json,.csv,.tsv,.txt',
    'aria-describedby': `${id}-hint`,
  });
  const open = element(document, 'label', { class: 'own-parts-open', for: id }, 'Open a list from a file');
  const hint = element(
    document,
    'p',
    { class: 'own-parts-note', id: `${id}-hint` },
    `One list holds your lenses, expanders and plates. It stays in this browser; nothing leaves your computer. A table of ${partWords[kind].many} (CSV) opens too: a column for the name, one for each value below with its unit.`,
  );
  saving.addEventListener('click', () =>
    attempt(() => {
      save('stepwell-parts.json', writePartsFile(store.value()));
      return 'The list was saved as stepwell-parts.json.';
    }),
  );
  picker.addEventListener('change', () => {
    const file = picker.files?.[0];
    picker.value = '';
    if (file) void attempt(async () => openList(kind, store, file.name, await file.text()));
  });
  const buttons = element(document, 'div', { class: 'own-parts-buttons' }, saving, picker, open);
  return {
    element: element(document, 'div', { class: 'own-parts-files' }, buttons, hint),
    show: () => {
      saving.hidden = store.value().length === 0;
    },
  };
}

/** Adds what a file holds to the list, and says what became of it. */
export function openList(kind: PartKind, store: OwnPartsStore, name: string, text: string): string {
  const read = /\.(csv|tsv|txt)$/i.test(name) ? readPartsTable(kind, text, name) : readPartsFile(text, name);
  let merged: MergedParts | undefined;
  store.change((parts) => {
    merged = mergeParts(parts, read.parts);
    return merged.parts;
  });
  return openedWords(name, merged!, read);
}

function openedWords(file: string, { added, same, leftOut }: MergedParts, { unknown }: PartsFile): string {
  const names = (parts: OwnParts) => parts.map(({ name }) => `‘${name}’`).join(', ');
  return [
    `‘${file}’: ${added.length === 0 ? 'nothing new' : `added ${names(added)}`}.`,
    ...(same.length > 0 ? [`Already in the list: ${names(same)}.`] : []),
    ...(leftOut.length > 0
      ? [`Left out, since the list has other values under that name: ${names(leftOut)}.`]
      : []),
    ...(unknown.length > 0 ? [`Left out as unknown: ${unknown.join(', ')}.`] : []),
  ].join(' ');
}
