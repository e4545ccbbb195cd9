import * as v from 'valibot';
import type { Graph } from '../graph/graph.ts';
import { isInput } from '../graph/quantity.ts';
import { checkInput, type Patch } from '../graph/state.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { Problem } from '../problem.ts';

/** The version of design files written now; every earlier version opens. */
export const designVersion = 1;

const numberEntry = v.object({ value: v.pipe(v.number(), v.finite()), unit: v.string() });
const choiceEntry = v.object({ choice: v.string() });
const fileSchema = v.object({
  format: v.literal('stepwell-design'),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  name: v.optional(v.string()),
  about: v.optional(v.string()),
  inputs: v.record(v.string(), v.union([numberEntry, choiceEntry])),
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
  const parsed = v.safeParse(fileSchema, parseJson(text, fileName));
  if (!parsed.success) {
    const issue = parsed.issues[0];
    const path = v.getDotPath(issue) ?? 'the whole file';
    throw new Problem(
      'unreadable',
      `'${fileName}' is not a design file: at ${path}: ${issue.message}. Choose a file that was saved as a design.`,
    );
  }
  const { version, inputs, name = fileName, about = '' } = parsed.output;
  if (version > designVersion) {
    throw new Problem(
      'unreadable',
      `'${fileName}' is version ${version} and this program reads up to version ${designVersion}; open it with a newer program.`,
    );
  }
  const patch: Record<string, unknown> = {};
  const unknown: Record<string, unknown> = {};
  for (const [id, entry] of Object.entries(inputs)) {
    const quantity = graph.quantities.get(id);
    if (!quantity || !isInput(quantity)) unknown[id] = entry;
    else patch[id] = checkInput(quantity, entryValue(id, entry, String(quantity.unit), fileName));
  }
  return { name, about, patch, unknown };
}

function parseJson(text: string, fileName: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Problem(
      'unreadable',
      `'${fileName}' is not a design file: ${(error as Error).message}. Choose a file that was saved as a design.`,
    );
  }
}

function entryValue(
  id: string,
  entry: v.InferOutput<typeof numberEntry> | v.InferOutput<typeof choiceEntry>,
  unit: string,
  fileName: string,
): unknown {
  if ('choice' in entry) return entry.choice;
  if (!isKnownUnit(entry.unit) || !sameDimensions(dimensionsOf(entry.unit), dimensionsOf(unit))) {
    throw new Problem(
      'unreadable',
      `'${fileName}' gives ${id} in '${entry.unit}', which is no unit for it; use ${unit}.`,
      { input: id },
    );
  }
  return fromUnit(entry.value, unit, entry.unit);
}

/** Text of a design file with every input that can be written, in the order of their ids; pictures stay outside. */
export function writeDesignFile(graph: Graph, inputs: Patch, name: string, about = ''): string {
  // By id: the graph's order follows module exports, which runtimes and bundlers order differently.
  const ordered = [...graph.quantities.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  const entries = ordered.flatMap((quantity): [string, unknown][] => {
    if (quantity.kind === 'number')
      return [[quantity.id, { value: inputs[quantity.id], unit: quantity.unit }]];
    if (quantity.kind === 'choice') return [[quantity.id, { choice: inputs[quantity.id] }]];
    return [];
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
