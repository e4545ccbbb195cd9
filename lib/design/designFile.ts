import * as v from 'valibot';
import type { Graph } from '../graph/graph.ts';
import { isInput } from '../graph/quantity.ts';
import type { Patch } from '../graph/state.ts';
import { readEntry, readSavedFile, savedEntry, writeEntry } from './savedFile.ts';

/** The version of design files written now; every earlier version opens. */
export const designVersion = 1;

const fileSchema = v.object({
  format: v.literal('stepwell-design'),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  name: v.optional(v.string()),
  about: v.optional(v.string()),
  inputs: v.record(v.string(), savedEntry),
});

/** A design as read: what to set, and the ids that this version does not know, kept as they were. */
export interface DesignFile {
  readonly name: string;
  readonly about: string;
  readonly patch: Patch;
  readonly unknown: Readonly<Record<string, unknown>>;
}

/** Reads a design file; `fileName` appears in messages. A bad file throws a Problem and sets nothing. */
export function readDesignFile(graph: Graph, text: string, fileName: string): DesignFile {
  const words = { kind: 'a design file', origin: 'that was saved as a design', version: designVersion };
  const { inputs, name = fileName, about = '' } = readSavedFile(fileSchema, text, fileName, words);
  const patch: Record<string, unknown> = {};
  const unknown: Record<string, unknown> = {};
  for (const [id, entry] of Object.entries(inputs)) {
    const quantity = graph.quantities.get(id);
    if (!quantity || !isInput(quantity)) unknown[id] = entry;
    else patch[id] = readEntry(quantity, entry, fileName);
  }
  return { name, about, patch, unknown };
}

/** Text of a design file with every input that can be written, in the order of their ids; pictures stay outside. */
export function writeDesignFile(graph: Graph, inputs: Patch, name: string, about = ''): string {
  // By id: the graph's order follows module exports, which runtimes and bundlers order differently.
  const ordered = [...graph.quantities.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const entries = ordered.flatMap((quantity): [string, unknown][] => {
    const entry = writeEntry(quantity, inputs[quantity.id]);
    return entry ? [[quantity.id, entry]] : [];
  });
  const content = {
    format: 'stepwell-design',
    version: designVersion,
    name,
    about,
    inputs: Object.fromEntries(entries),
  };
  return `${JSON.stringify(content, null, 2)}\n`;
}
