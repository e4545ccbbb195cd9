import type * as v from 'valibot';

/** What stands in a file, as far as it can be shown in a sentence: `the text "515 nm"`, `7`, `nothing`, `a list`. */
export function writtenWords(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (typeof value === 'string') return `the text ${JSON.stringify(shortened(value))}`;
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? shortened(JSON.stringify(value)) : String(value);
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

/** What an object is to a person. */
export const namedEntries = 'a group of named entries';

/** What belongs in a place, by the words of the schema. */
const neededWords: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  Object: namedEntries,
  Array: 'a list',
};

/** The part of a file, as a person calls it, by its name in the file. */
const partNames: Readonly<Record<string, string>> = {
  format: 'the line that says what it is (format)',
  version: 'its version',
  name: 'its name',
  about: 'its notes (about)',
  inputs: 'the part with its values (inputs)',
  files: 'the part with its files (files)',
  parts: 'the list of its parts (parts)',
  initial: 'the number of its initial values (initial)',
  leftOut: 'the part that says what was left out (leftOut)',
  steps: 'its list of steps',
};

/** What a schema found wrong, in words: which part of the file, what stands there, and what belongs there. */
export function issueWords(issue: v.BaseIssue<unknown>): string {
  const place = placeWords(issue);
  const { input: written, expected, received } = issue;
  if (received === 'undefined') return `${place} is missing`;
  const needed = (expected && neededWords[expected]) ?? orWords(issue.message, expected);
  return `${place} is ${writtenWords(written)}, where ${needed} belongs`;
}

/** Checks of ours say in their message what belongs there; other schemas in what they expected. */
function orWords(message: string, expected: string | null): string {
  if (expected === null) return message.startsWith('Invalid integer') ? 'a whole number from 1 on' : message;
  const least = /^>=(\d+)$/.exec(expected)?.[1];
  if (least !== undefined) return `a whole number from ${least} on`;
  return expected.replace(/^\((.*)\)$/, '$1').replaceAll(' | ', ' or ');
}

function placeWords(issue: v.BaseIssue<unknown>): string {
  const keys = (issue.path ?? []).map(({ key }) => key);
  const [part, ...rest] = keys;
  if (part === undefined) return 'all that it holds';
  if (rest.length === 0) return partNames[String(part)] ?? `its ${part}`;
  if (part === 'parts') return `${rest.slice(1).join('.') || 'the entry'} of part ${Number(rest[0]) + 1}`;
  if (part === 'files') return `the content of the file kept under ${String(rest[0]).slice(0, 8)}…`;
  return `${rest.map(String).join('.')} in ${partNames[String(part)] ?? String(part)}`;
}
