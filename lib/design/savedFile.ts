import * as v from 'valibot';
import type { InputQuantity } from '../graph/quantity.ts';
import { checkInput } from '../graph/state.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { Problem } from '../problem.ts';

const numberEntry = v.object({ value: v.pipe(v.number(), v.finite()), unit: v.string() });
const choiceEntry = v.object({ choice: v.string() });

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
  const parsed = v.safeParse(schema, parseJson(text, refuse));
  if (!parsed.success) {
    const issue = parsed.issues[0];
    const why = issue.received === 'undefined' ? 'it is missing' : issue.message;
    throw refuse(`at ${v.getDotPath(issue) ?? 'the whole file'}: ${why}`);
  }
  const { version } = parsed.output;
  if (version > words.version) {
    throw new Problem(
      'unreadable',
      `'${fileName}' is version ${version} and this program reads up to version ${words.version}; open it with a newer program.`,
    );
  }
  return parsed.output;
}

function parseJson(text: string, refuse: (why: string) => Problem): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw refuse((error as Error).message);
  }
}

/** The value of an entry in SI, in the input's range or among its options; else a Problem. */
export function readEntry(input: InputQuantity, entry: SavedEntry, fileName: string): unknown {
  return checkInput(input, entryValue(input, entry, fileName));
}

function entryValue({ id, unit }: InputQuantity, entry: SavedEntry, fileName: string): unknown {
  if ('choice' in entry) return entry.choice;
  const own = String(unit);
  if (!isKnownUnit(entry.unit) || !sameDimensions(dimensionsOf(entry.unit), dimensionsOf(own))) {
    throw new Problem(
      'unreadable',
      `'${fileName}' gives ${id} in '${entry.unit}', which is no unit for it; use ${own}.`,
      { input: id },
    );
  }
  return fromUnit(entry.value, own, entry.unit);
}

/** The entry of a value; undefined for what a file of ours does not hold, such as a picture. */
export function writeEntry(input: { readonly kind: string; readonly unit: unknown }, value: unknown) {
  if (input.kind === 'number') return { value, unit: input.unit };
  return input.kind === 'choice' ? { choice: value } : undefined;
}
