import * as v from 'valibot';
import { Problem } from '../problem.ts';
import { createPart, inputsOfKind, type OwnPart, partKinds } from './ownParts.ts';
import { addPart, type OwnParts } from './ownPartsList.ts';
import { readSavedFile, writeEntry } from './savedFile.ts';
import { readValue } from './savedValue.ts';

/** The version of part lists written now; every earlier version opens. */
export const partsVersion = 1;

const partSchema = v.object({
  kind: v.picklist(partKinds),
  name: v.string(),
  note: v.optional(v.string()),
  values: v.record(v.string(), v.unknown()),
});
const fileSchema = v.object({
  format: v.literal('stepwell-parts'),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  parts: v.array(partSchema),
});

/** Parts as read, and what this version does not know and leaves out, in words. */
export interface PartsFile {
  readonly parts: OwnParts;
  readonly unknown: readonly string[];
}

/** Reads a list of parts; `fileName` appears in messages. A bad file throws a Problem, and then none of it counts. */
export function readPartsFile(text: string, fileName: string): PartsFile {
  const words = {
    format: 'stepwell-parts',
    kind: 'a list of parts',
    origin: 'that was saved as a list of parts',
    version: partsVersion,
  };
  const saved = readSavedFile(fileSchema, text, fileName, words).parts;
  const unknown: string[] = [];
  let parts: OwnParts = [];
  saved.forEach((entry, i) => {
    parts = inPlace(`'${fileName}', part ${i + 1} (${entry.kind} ‘${entry.name.slice(0, 40)}’)`, () =>
      addPart(parts, readPart(entry, unknown)),
    );
  });
  return { parts, unknown };
}

function readPart(
  { kind, name, note = '', values: saved }: v.InferOutput<typeof partSchema>,
  unknown: string[],
): OwnPart {
  const inputs = new Map(inputsOfKind(kind).map((input) => [input.id, input]));
  const values: Record<string, unknown> = {};
  for (const [id, entry] of Object.entries(saved)) {
    const input = inputs.get(id);
    if (input)
      values[id] = readValue(input, entry, (form) => (form === undefined ? '' : `Write it as ${form}.`));
    else unknown.push(`${id} of the ${kind} ‘${name}’`);
  }
  return createPart(kind, name, values, note);
}

/** Runs a reading; the message of a Problem then begins with the place where it arose. */
export function inPlace<T>(place: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    throw new Problem(error.kind, `${place}: ${error.message}`, error.parts);
  }
}

/** Text of a list of parts, every value with its unit. */
export function writePartsFile(parts: OwnParts): string {
  const saved = parts.map(({ kind, name, note, values }) => ({
    kind,
    name,
    ...(note === '' ? {} : { note }),
    values: Object.fromEntries(
      inputsOfKind(kind)
        .filter(({ id }) => Object.hasOwn(values, id))
        .map((input) => [input.id, writeEntry(input, values[input.id])]),
    ),
  }));
  return `${JSON.stringify({ format: 'stepwell-parts', version: partsVersion, parts: saved }, null, 2)}\n`;
}
