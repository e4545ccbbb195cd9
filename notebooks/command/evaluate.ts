import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { valueOrThrow } from '../../lib/graph/outcome.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, openDesign } from './openDesign.ts';
import { readOptions, required } from './options.ts';

/** `evaluate`: JSON `{id: {value (SI), unit, shown}}` for the ids asked for; a note where the model is strained. */
export function evaluate(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, [...designOptions, 'get']);
  const ids = required(options, 'get', 'spot.width,spot.dip')
    .split(',')
    .map((id) => id.trim());
  for (const id of ids) {
    if (!designGraph.quantities.has(id)) {
      throw new Problem('unreadable', `There is no quantity '${id}'; the command quantities lists all.`);
    }
  }
  const state = openDesign(options, io);
  const outcomes = createEngine(designGraph, state.inputs).evaluate(ids);
  const result = ids.map((id) => {
    const outcome = outcomes[id]!;
    const value = valueOrThrow(outcome, `${id}: `);
    const quantity = designGraph.quantities.get(id)!;
    const note = 'note' in outcome && outcome.note !== undefined ? { note: outcome.note } : {};
    return [id, { value, unit: quantity.unit, shown: shownValue(quantity, outcome), ...note }];
  });
  return `${JSON.stringify(Object.fromEntries(result), plainArrays, 2)}\n`;
}

/** Typed arrays as plain ones; images and kernels by their size only. */
function plainArrays(_key: string, value: unknown): unknown {
  if (value instanceof Float64Array || value instanceof Uint16Array) {
    return value.length > 4096 ? { length: value.length } : Array.from(value);
  }
  return value;
}
