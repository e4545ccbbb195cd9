import * as v from 'valibot';
import type { Graph } from '../graph/graph.ts';
import { type OriginalFile, originalOf, readFrom } from '../graph/originals.ts';
import { type FileInput, type InputQuantity, isInput, type ListInput } from '../graph/quantity.ts';
import { checkInput, type Patch } from '../graph/state.ts';
import { Problem } from '../problem.ts';
import { inPlace } from './ownPartsFile.ts';
import { choiceEntry, entriesOf, issueWords, numberEntry, readEntry, writeEntry } from './savedFile.ts';

const fileEntry = v.union([
  v.object({ file: v.null() }),
  v.object({ file: v.string(), sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)) }),
]);

/** Reads a file for the input of that id as if it had just been chosen; throws a Problem that names it. */
export type ReadFile = (id: string, bytes: Uint8Array, name: string) => unknown;

/** Where saved inputs find the files that they name. */
export interface FileSource {
  /** Bytes of the file with that SHA-256; undefined where there is none. */
  bytesOf(sha256: string): Uint8Array | undefined;
  readonly read: ReadFile;
}

/** Entries by id, as saved: values of this version and what it does not know. */
export type SavedEntries = Readonly<Record<string, unknown>>;

/** Saved entries as read: what to set, and the entries of ids that this version does not know, as they were. */
export interface ReadInputs {
  readonly patch: Patch;
  readonly unknown: SavedEntries;
}

/** Reads saved entries; a value that cannot be throws a Problem that begins with `place` and the id. */
export function readInputs(
  graph: Graph,
  entries: SavedEntries,
  place: string,
  files: FileSource,
): ReadInputs {
  const patch: Record<string, unknown> = {};
  const unknown: Record<string, unknown> = {};
  for (const [id, entry] of Object.entries(entries)) {
    const quantity = graph.quantities.get(id);
    if (!quantity || !isInput(quantity)) unknown[id] = entry;
    else patch[id] = inPlace(`'${place}', inputs.${id}`, () => readInput(quantity, entry, files));
  }
  return { patch, unknown };
}

function readInput(input: InputQuantity, entry: unknown, files: FileSource): unknown {
  if (input.kind === 'file') return readFileEntry(input, entry, files);
  if (input.kind === 'list') return readListEntry(input, entry, files);
  const schema = input.kind === 'number' ? numberEntry : choiceEntry;
  return readEntry(input, parse<v.InferOutput<typeof schema>>(schema, entry, formOf(input)));
}

const listEntry = v.object({ list: v.array(entriesOf(v.unknown())) });

/** Items as saved. What an item leaves out is as at first; one that says more is a later program's. */
function readListEntry(input: ListInput, entry: unknown, files: FileSource): unknown {
  const { list } = parse<v.InferOutput<typeof listEntry>>(listEntry, entry, formOf(input));
  const readItem = (entries: SavedEntries) => {
    const more = Object.keys(entries).find((id) => input.of.every((part) => part.id !== id));
    if (more !== undefined) throw unknownPart(input, more);
    const values = input.of.map((part) => {
      const given = Object.hasOwn(entries, part.id);
      const read = () => readInput(part, entries[part.id], files);
      return [part.id, given ? inPlace(part.id, read) : part.initial];
    });
    return Object.fromEntries(values);
  };
  return checkInput(
    input,
    list.map((entries, i) => inPlace(`list.${i}`, () => readItem(entries))),
  );
}

function unknownPart(input: ListInput, id: string): Problem {
  return new Problem(
    'unreadable',
    `'${id.slice(0, 80)}' is nothing that this program knows of ${input.name}. Open it with a newer program, or leave it out.`,
    { input: input.id },
  );
}

function readFileEntry(input: FileInput, entry: unknown, { bytesOf, read }: FileSource): unknown {
  const saved = parse<v.InferOutput<typeof fileEntry>>(fileEntry, entry, formOf(input));
  if (saved.file === null) return null;
  const { file: name, sha256 } = saved as { readonly file: string; readonly sha256: string };
  const bytes = bytesOf(sha256);
  if (!bytes) {
    const which = `"${name}" (SHA-256 ${sha256.slice(0, 8)}…)`;
    throw new Problem(
      'unreadable',
      `The bytes of ${which} are missing; save the design again with its files.`,
      {
        input: input.id,
      },
    );
  }
  return readFrom(read(input.id, bytes, name), { name, bytes, sha256 });
}

function parse<T>(schema: v.GenericSchema<unknown, T>, entry: unknown, form: string): T {
  const parsed = v.safeParse(schema, entry);
  if (parsed.success) return parsed.output;
  const issue = parsed.issues[0];
  const at = v.getDotPath(issue);
  throw new Problem(
    'unreadable',
    `${at === null ? '' : `${at}: `}${issueWords(issue)}. Write it as ${form}.`,
  );
}

/** How an entry looks that could be read. */
function formOf(input: InputQuantity): string {
  if (input.kind === 'file') return '{"file": "beam.png", "sha256": "64 digits"} or {"file": null}';
  if (input.kind === 'list') return `{"list": [{"${input.of[0]!.id}": …}]}`;
  return JSON.stringify(writeEntry(input, input.initial));
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
