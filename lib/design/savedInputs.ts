import * as v from 'valibot';
import type { Graph } from '../graph/graph.ts';
import { type OriginalFile, originalOf, readFrom } from '../graph/originals.ts';
import { type FileInput, type InputQuantity, isInput, type ListInput } from '../graph/quantity.ts';
import { checkInput, type Patch } from '../graph/state.ts';
import { fromBase64 } from '../measured/base64.ts';
import { sha256 } from '../measured/sha256.ts';
import { Problem } from '../problem.ts';
import { inPlace } from './ownPartsFile.ts';
import { entriesOf, writeEntry } from './savedFile.ts';
import { nameOf, type Remedy, readValue, withRemedy } from './savedValue.ts';
import { writtenWords } from './schemaWords.ts';

const fileEntry = v.union([
  v.object({ file: v.null() }),
  v.object({ file: v.string(), sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)) }),
]);

/** Reads a file for the input of that id as if it had just been chosen; throws a Problem that names it. */
export type ReadFile = (id: string, bytes: Uint8Array, name: string) => unknown;

/** Where saved inputs find the files that they name. */
export interface FileSource {
  /** Bytes of the file with that SHA-256; undefined where there is none, or in words how it is damaged. */
  bytesOf(sha256: string): Uint8Array | string | undefined;
  readonly read: ReadFile;
}

/** Entries by id, as saved: values of this version and what it does not know. */
export type SavedEntries = Readonly<Record<string, unknown>>;

/** The bytes of a saved file from their base64, or in words how they are damaged. */
export function savedBytes(text: string, hash: string): Uint8Array | string {
  const bytes = fromBase64(text);
  if (!bytes) return 'its bytes were damaged after it was saved, and are no base64 any more';
  return sha256(bytes) === hash
    ? bytes
    : 'its bytes were changed after it was saved, and do not match their check sum';
}

/** Saved entries as read: what to set, and the entries of ids that this version does not know, as they were. */
export interface ReadInputs {
  readonly patch: Patch;
  readonly unknown: SavedEntries;
}

/** How messages name the place of an entry, and what they say can be done about one that cannot be read. */
export interface SavedPlace {
  /** Words for the place of the entry of that id, before a colon. */
  at(id: string): string;
  readonly remedy: Remedy;
}

/** Reads saved entries; for a value that cannot be a Problem says where it stands and what is allowed. */
export function readInputs(
  graph: Graph,
  entries: SavedEntries,
  { at, remedy }: SavedPlace,
  files: FileSource,
): ReadInputs {
  const patch: Record<string, unknown> = {};
  const unknown: Record<string, unknown> = {};
  for (const [id, entry] of Object.entries(entries)) {
    const quantity = graph.quantities.get(id);
    if (!quantity || !isInput(quantity)) unknown[id] = entry;
    else patch[id] = inPlace(at(id), () => readInput(quantity, entry, remedy, files));
  }
  return { patch, unknown };
}

function readInput(input: InputQuantity, entry: unknown, remedy: Remedy, files: FileSource): unknown {
  if (input.kind === 'file') return readFileEntry(input, entry, remedy, files);
  if (input.kind === 'list') return readListEntry(input, entry, remedy, files);
  return readValue(input, entry, remedy);
}

const listEntry = v.object({ list: v.array(entriesOf(v.unknown())) });

/** Items as saved. What an item leaves out is as at first; one that says more is a later program's. */
function readListEntry(input: ListInput, entry: unknown, remedy: Remedy, files: FileSource): unknown {
  const parsed = v.safeParse(listEntry, entry);
  if (!parsed.success)
    throw new Problem(
      'unreadable',
      withRemedy(
        `${nameOf(input)}: there stands ${writtenWords(entry)}, where a list of groups of named entries belongs.`,
        remedy(`{"list": [{"${input.of[0]!.id}": …}]}`),
      ),
      { input: input.id },
    );
  const readItem = (entries: SavedEntries) => {
    const more = Object.keys(entries).find((id) => input.of.every((part) => part.id !== id));
    if (more !== undefined) throw unknownPart(input, more);
    const values = input.of.map((part) => {
      const given = Object.hasOwn(entries, part.id);
      return [part.id, given ? readInput(part, entries[part.id], remedy, files) : part.initial];
    });
    return Object.fromEntries(values);
  };
  return checkInput(
    input,
    parsed.output.list.map((entries, i) =>
      inPlace(`${input.name}, number ${i + 1}`, () => readItem(entries)),
    ),
  );
}

function unknownPart(input: ListInput, id: string): Problem {
  return new Problem(
    'unreadable',
    `'${id.slice(0, 80)}' is nothing that this program knows of ${input.name}. Open it with a newer program, or leave it out.`,
    { input: input.id },
  );
}

/** How the entry of a file looks. */
const fileForm = '{"file": "beam.png", "sha256": "its check sum"} or, without a file, as {"file": null}';

function readFileEntry(
  input: FileInput,
  entry: unknown,
  remedy: Remedy,
  { bytesOf, read }: FileSource,
): unknown {
  const refuse = (what: string, remedyWords: string) =>
    new Problem('unreadable', withRemedy(`${nameOf(input)} ${what}.`, remedyWords), { input: input.id });
  const parsed = v.safeParse(fileEntry, entry);
  if (!parsed.success)
    throw refuse(
      `is written as ${writtenWords(entry)}, where the name of a file and its check sum of 64 digits belong`,
      remedy(fileForm),
    );
  const saved = parsed.output;
  if (saved.file === null || !('sha256' in saved)) return null;
  const { file: name, sha256 } = saved;
  const again = 'Ask for the design again with its files, or give the file to it anew.';
  const bytes = bytesOf(sha256);
  if (bytes === undefined)
    throw refuse(`names the file "${name.slice(0, 60)}", which was not saved with it`, again);
  if (typeof bytes === 'string') throw refuse(`cannot be read from "${name.slice(0, 60)}": ${bytes}`, again);
  return readFrom(
    inPlace(nameOf(input), () => read(input.id, bytes, name)),
    { name, bytes, sha256 },
  );
}

/** Entries of all inputs that have a value in `inputs`, by id, and the files that they name. */
export function writeInputs(graph: Graph, inputs: Patch) {
  // By id: the graph's order follows module exports, which runtimes and bundlers order differently.
  const ordered = [...graph.quantities.values()].filter(isInput).sort((a, b) => (a.id < b.id ? -1 : 1));
  return writeEach(ordered, inputs);
}

function writeEach(ordered: readonly InputQuantity[], inputs: Patch) {
  const entries: Record<string, unknown> = {};
  const files: OriginalFile[] = [];
  for (const input of ordered.filter(({ id }) => Object.hasOwn(inputs, id))) {
    const value = inputs[input.id];
    if (input.kind === 'list') {
      const items = (value as readonly Patch[]).map((item) => writeEach(input.of, item));
      files.push(...items.flatMap((item) => item.files));
      entries[input.id] = { list: items.map((item) => item.entries) };
      continue;
    }
    const original = originalOf(value);
    if (original) files.push(original);
    entries[input.id] = input.kind === 'file' ? entryOfFile(original) : writeEntry(input, value);
  }
  return { entries, files };
}

/** A value that was not read from a file cannot be read again, and is saved as none. */
function entryOfFile(original: OriginalFile | undefined): unknown {
  return original ? { file: original.name, sha256: original.sha256 } : { file: null };
}
