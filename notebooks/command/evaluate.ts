import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, type Outcome, valueOrThrow } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { Problem } from '../../lib/problem.ts';
import type { CommandIo, PartlyDone } from './commandIo.ts';
import { designOptions, graphOf, openDesign } from './openDesign.ts';
import { type Options, readOptions, required } from './options.ts';
import { judgedCsv } from './requirements.ts';

/**
 * `evaluate`: JSON `{id: {value (SI), unit, shown}}` for the ids asked for; a note where the model is strained. Where some
 * have no value, `{id: {problem}}` stands for them; where none has, only the problem is there. With `--requirements`, what
 * is asked of the design and whether it is met, as CSV.
 */
export function evaluate(args: readonly string[], io: CommandIo): string | PartlyDone {
  const options = readOptions(args, [...designOptions, 'get'], ['requirements']);
  if (options.one('requirements') !== undefined) return judgeDesign(options, io);
  const ids = required(options, 'get', 'spot.width,spot.dip')
    .split(',')
    .map((id) => id.trim());
  const state = openDesign(options, io);
  const graph = graphOf(state);
  for (const id of ids) {
    if (!graph.quantities.has(id)) {
      throw new Problem('unreadable', `There is no quantity '${id}'; the command quantities lists all.`);
    }
  }
  const outcomes = createEngine(graph, state.inputs).evaluate(ids);
  const missing = ids.filter((id) => !hasValue(outcomes[id]!));
  if (missing.length === ids.length) valueOrThrow(outcomes[ids[0]!]!, `${ids[0]}: `);
  const result = ids.map((id) => [id, entryOf(graph.quantities.get(id)!, outcomes[id]!)]);
  const out = `${JSON.stringify(Object.fromEntries(result), plainArrays, 2)}\n`;
  if (missing.length === 0) return out;
  const messages = missing.map((id) => `${id}: ${messageOf(outcomes[id]!)}`);
  return { out, problem: new Problem('absent', messages.join(' ')) };
}

function judgeDesign(options: Options, io: CommandIo): string | PartlyDone {
  if (options.one('get') !== undefined)
    throw new Problem('unreadable', 'Give --get or --requirements, not both; each writes a list of its own.');
  return judgedCsv(openDesign(options, io));
}

function messageOf(outcome: Outcome): string {
  return hasValue(outcome) ? '' : outcome.problem.message;
}

/** What is written for a quantity. */
function entryOf(quantity: Quantity, outcome: Outcome): object {
  if (!hasValue(outcome)) return { problem: outcome.problem.message };
  const note = outcome.note === undefined ? {} : { note: outcome.note };
  return { value: outcome.value, unit: quantity.unit, shown: shownValue(quantity, outcome), ...note };
}

/** Typed arrays as plain ones; images and kernels by their size only. */
function plainArrays(_key: string, value: unknown): unknown {
  if (value instanceof Float64Array || value instanceof Uint16Array) {
    return value.length > 4096 ? { length: value.length } : Array.from(value);
  }
  return value;
}
