import * as v from 'valibot';
import { Problem } from '../problem.ts';
import { readJson } from './jsonText.ts';
import { issueWords, namedEntries } from './schemaWords.ts';

/** How messages name a kind of file, and what to choose instead of a wrong one. */
export interface SavedFileWords {
  /** With its article: "a design file". */
  readonly kind: string;
  /** What its `format` says. */
  readonly format: string;
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
  throw refuse(kindOf(content, words.format) ?? issueWords(parsed.issues[0]));
}

/** Files of ours by their format. */
const kinds = new Map<unknown, string>([
  ['stepwell-design', 'it is a design'],
  ['stepwell-parts', 'it is a list of lenses, expanders and plates'],
]);

/** What a file of another kind is; undefined where it is none of ours. */
function kindOf(content: unknown, wanted: string): string | undefined {
  const { format } = (content ?? {}) as { readonly format?: unknown };
  return format === wanted ? undefined : kinds.get(format);
}

/** An object of entries, and no list, which would pass for one whose names are numbers. */
export function entriesOf<T>(entry: v.GenericSchema<unknown, T>) {
  return v.pipe(
    v.unknown(),
    v.check((value) => !Array.isArray(value), namedEntries),
    v.record(v.string(), entry),
  );
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

/** The entry of a number or a choice; undefined for a file, whose bytes need a place of their own. */
export function writeEntry(input: { readonly kind: string; readonly unit: unknown }, value: unknown) {
  if (input.kind === 'number') return { value, unit: input.unit };
  return input.kind === 'choice' ? { choice: value } : undefined;
}
