import * as v from 'valibot';
import type { Graph } from '../graph/graph.ts';
import type { DesignState, Kept } from '../graph/state.ts';
import { noStudies, type Studies } from '../graph/studies.ts';
import { toBase64 } from '../measured/base64.ts';
import { entriesOf, readSavedFile } from './savedFile.ts';
import { type ReadFile, readInputs, savedBytes, writeInputs } from './savedInputs.ts';
import { readStudies, studiesSchema, writeStudies } from './savedStudies.ts';

/** The version of design files written now; every earlier version opens. */
export const designVersion = 5;

const format = 'stepwell-design';

const fileSchema = v.object({
  format: v.literal(format),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  name: v.optional(v.string()),
  about: v.optional(v.string()),
  inputs: entriesOf(v.unknown()),
  files: entriesOf(v.string()),
  // Since version 3.
  studies: v.optional(studiesSchema),
});

const words = {
  format,
  kind: 'a design file',
  origin: 'that was saved as a design',
  version: designVersion,
  // Version 1 held numbers and choices only.
  // Version 2 held no studies.
  // Version 3 held no formula lines, pages and texts of the person's own.
  // Version 4 held no lectures.
  migrations: {
    1: (content: object) => ({ ...content, version: 2, files: {} }),
    2: (content: object) => ({ ...content, version: 3 }),
    3: (content: object) => ({ ...content, version: 4 }),
    4: (content: object) => ({ ...content, version: 5 }),
  },
};

/** A design as saved: its inputs, what it is called and noted as, and what a later program has put into it. */
export type SavedDesign = Pick<DesignState, 'inputs' | 'name' | 'about' | 'kept' | 'studies'>;

/** A design as read. `inputs` are those that the file gives; the others are at their initial values. */
export interface DesignFile extends SavedDesign {
  readonly name: string;
  readonly about: string;
  /** Ids that this version does not know, with their files, kept as they were. */
  readonly kept: Kept;
}

/**
 * Reads a design file; `fileName` appears in messages, `read` reads the files in it. A bad file throws a Problem that
 * names file, place and value, and sets nothing.
 */
export function readDesignFile(graph: Graph, text: string, fileName: string, read: ReadFile): DesignFile {
  const saved = readSavedFile(fileSchema, text, fileName, words);
  const { name = nameFrom(fileName), about = '', files } = saved;
  const bytesOf = (hash: string) => (Object.hasOwn(files, hash) ? savedBytes(files[hash]!, hash) : undefined);
  const place = {
    at: (id: string) => `'${fileName}', at ${id}`,
    remedy: (form?: string) =>
      `${form === undefined ? 'Correct it there' : `Write it as ${form}`}, or choose another file.`,
  };
  const { patch, unknown } = readInputs(graph, saved.inputs, place, { bytesOf, read });
  const studies = saved.studies && readStudies(graph, saved.studies, graph.initial, place, { bytesOf, read });
  const later = [unknown, ...(studies ? keptIn(studies) : [])];
  return {
    name,
    about,
    inputs: patch,
    kept: { inputs: unknown, files: Object.assign({}, ...later.map((entries) => filesOf(entries, files))) },
    ...(studies && { studies }),
  };
}

/** Entries that this program does not know, of alternatives and of what steps of lectures set. */
function keptIn({ alternatives, lectures }: Studies): Kept['inputs'][] {
  return [...alternatives, ...lectures.flatMap(({ steps }) => steps)].map(({ kept = {} }) => kept);
}

/** "beam.json" is called "beam". */
function nameFrom(fileName: string): string {
  return fileName.replace(/^.*[/\\]/, '').replace(/\.json$/i, '');
}

/** The files that unknown entries name, as far as they are there. */
export function filesOf(entries: Kept['inputs'], files: Kept['files']): Kept['files'] {
  // Wherever it stands in an entry: a later program may keep several files in one.
  const text = JSON.stringify(entries);
  return Object.fromEntries(Object.entries(files).filter(([hash]) => text.includes(JSON.stringify(hash))));
}

/** Text of a design file with every input in `design`, in the order of their ids, and the files that they were read from. */
export function writeDesignFile(graph: Graph, design: SavedDesign): string {
  const { entries, files } = writeInputs(graph, design.inputs);
  const studies = writeStudies(graph, design.studies ?? noStudies);
  const content = {
    format,
    version: designVersion,
    name: design.name ?? '',
    about: design.about ?? '',
    inputs: { ...entries, ...design.kept?.inputs },
    ...(design.studies && { studies: studies.saved }),
    files: {
      ...Object.fromEntries([...files, ...studies.files].map((file) => [file.sha256, toBase64(file.bytes)])),
      ...design.kept?.files,
    },
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}
