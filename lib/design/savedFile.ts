import * as v from 'valibot';
import type { InputQuantity } from '../graph/quantity.ts';
import { checkInput } from '../graph/state.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { readJson } from './jsonText.ts';

export const numberEntry = v.object({ value: v.pipe(v.number(), v.finite()), unit: v.string() });
export const choiceEntry = v.object({ choice: v.string() });

/** A value in a file: a number with its unit, or a choice. */
export const savedEntry = v.union([numberEntry, choiceEntry]);
export type SavedEntry = v.InferOutput<typeof savedEntry>;

/** How messages name a kind of file, and what to choose instead of a wrong one. */
export interface SavedFileWords {
  /** With its article: "a design file". */
  readonly kind: string;
  /** "that was saved as a design". */
  readonly origin: string;
  /** Versions above this one are refused. */
  readonly version: number;
  /** By version: what turns a content of that version into one of the next; none where the older one reads as it is. */
  readonly migrations?: Readonly<Record<number, (content: object) => object>>;
}

/** The content of a JSON file of ours, checked against its schema and version; a wrong one throws a Problem. */
export function readSavedFile<T extends { readonly version: number }>(
  schema: v.GenericSchema<unknown, T>,
  text: string,
  fileName: string,
  words: SavedFileWords,
): T {
  const refuse = (why: string) =>
    new Problem('unreadable', `'${fileName}' is not ${words.kind}: ${why}. Choose a file ${words.origin}.`);
  const content = migrate(readJson(text, refuse), fileName, words);
  const parsed = v.safeParse(schema, content);
  if (parsed.success) return parsed.output;
  throw refuse(`at ${v.getDotPath(parsed.issues[0]) ?? 'the whole file'}: ${issueWords(parsed.issues[0])}`);
}

/** An object of entries, and no list, which would pass for one whose names are numbers. */
export function entriesOf<T>(entry: v.GenericSchema<unknown, T>) {
  return v.pipe(
    v.unknown(),
    v.check((value) => !Array.isArray(value), 'it is a list where entries by name are needed'),
    v.record(v.string(), entry),
  );
}

/** What a schema found wrong, in words. */
export function issueWords(issue: v.BaseIssue<unknown>): string {
  return issue.received === 'undefined' ? 'it is missing' : issue.message;
}

/** The content in the present version. What names no version is left to the schema, which says so. */
function migrate(content: unknown, fileName: string, words: SavedFileWords): unknown {
  const from = (content as { readonly version?: unknown } | null)?.version;
  if (typeof from !== 'number' || !Number.isInteger(from) || from < 1) return content;
  if (from > words.version) {
    throw new Problem(
      'unreadable',
      `'${fileName}' is version ${from} and this program reads up to version ${words.version}; open it with a newer program.`,
    );
  }
  let migrated = content as object;
  for (let version = from; version < words.version; version++)
    migrated = words.migrations?.[version]?.(migrated) ?? migrated;
  return migrated;
}

/** The value of an entry in SI, in the input's range or among its options; else a Problem. */
export function readEntry(input: InputQuantity, entry: SavedEntry): unknown {
  return checkInput(input, entryValue(input, entry));
}

function entryValue({ id, unit }: InputQuantity, entry: SavedEntry): unknown {
  if ('choice' in entry) return entry.choice;
  const own = String(unit);
  if (!isKnownUnit(entry.unit) || !sameDimensions(dimensionsOf(entry.unit), dimensionsOf(own))) {
    throw new Problem(
      'unreadable',
      `${id} is given in '${entry.unit.slice(0, 40)}', which is no unit for it; use ${own}.`,
      { input: id },
    );
  }
  return fromUnit(entry.value, own, entry.unit);
}

/** The entry of a number or a choice; undefined for a file, whose bytes need a place of their own. */
export function writeEntry(input: { readonly kind: string; readonly unit: unknown }, value: unknown) {
  if (input.kind === 'number') return { value, unit: input.unit };
  return input.kind === 'choice' ? { choice: value } : undefined;
}
