import { designGraph } from '../../lib/design/design.ts';
import type { NumberInput, Quantity } from '../../lib/graph/quantity.ts';
import { inputOf } from '../../lib/graph/state.ts';
import { readTyped } from '../../lib/graph/typedInput.ts';
import { formatUnit, toUnit } from '../../lib/graph/units.ts';
import { Problem } from '../../lib/problem.ts';
import { influencesOn } from '../../lib/studies/influence.ts';
import { patchAt, type VariedInput, valuesBetween, vary as varyOver } from '../../lib/studies/vary.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, graphOf, openDesign } from './openDesign.ts';
import { oneOf, readOptions, required } from './options.ts';

/** `vary`: CSV of results over one or two inputs, a row for each place, the last input moving fastest. */
export function vary(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, [...designOptions, 'over', 'get', 'by']);
  const by = oneOf(options, 'by', ['steps', 'factors']);
  required({ ...options, one: (name) => options.all(name)[0] }, 'over', '"lens.focalLength=50:150:11 mm"');
  const over = options.all('over').map((text) => readOver(text, by));
  const ids = required(options, 'get', 'spot.width,spot.dip')
    .split(',')
    .map((id) => id.trim());
  const state = openDesign(options, io);
  const graph = graphOf(state);
  const results = varyOver(graph, state.inputs, over, ids);
  for (const { id, problem } of results) if (problem !== undefined) io.err(`${id}: ${problem}\n`);
  const quantities = [...over, ...results].map(({ id }) => graph.quantities.get(id)!);
  const rows = Array.from({ length: results[0]!.values.length }, (_, place) => {
    const patch = patchAt(over, place);
    return [...over.map(({ id }) => patch[id]), ...results.map(({ values }) => values[place])];
  });
  const lines = [
    quantities.map(headOf),
    ...rows.map((row) => row.map((value, i) => cellOf(quantities[i]!, value))),
  ];
  return `${lines.map((line) => line.join(',')).join('\r\n')}\r\n`;
}

/** `influence`: what a result depends on, the strongest first, as CSV. */
export function influence(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, [...designOptions, 'of']);
  const id = required(options, 'of', 'spot.width');
  const state = openDesign(options, io);
  const rows = influencesOn(graphOf(state), state.inputs, id).map(
    (one) => `${one.id},"${one.name}",${Number(one.strength.toPrecision(6))}`,
  );
  return `${['id,name,relative change over relative change', ...rows].join('\r\n')}\r\n`;
}

/** "ID=FROM:TO:COUNT UNIT", or "ID=VALUE;VALUE;…". */
function readOver(text: string, by: 'steps' | 'factors'): VariedInput {
  const equals = text.indexOf('=');
  const id = text.slice(0, Math.max(0, equals)).trim();
  const input = inputOf(designGraph, id);
  const given = text.slice(equals + 1).trim();
  const range = /^([^:]+):([^:]+):(\d+)\s*([^:]*)$/.exec(given);
  if (input.kind === 'choice') return { id, values: given.split(';').map((one) => one.trim()) };
  if (input.kind !== 'number')
    throw new Problem('impossible', `${input.name} is a ${input.kind}, and no value that can be varied.`, {
      input: id,
    });
  if (!range) return { id, values: given.split(';').map((one) => readTyped(input, one)) };
  const [, from = '', to = '', count = '', unit = ''] = range;
  const end = (one: string) => readTyped(input, `${one} ${unit}`.trim());
  return { id, values: valuesBetween(end(from), end(to), Number(count), by) };
}

/** The unit that a number is written in: that it is shown in, where it is one. */
function writtenUnit({ unit, display }: Pick<NumberInput, 'unit' | 'display'>): string {
  return display === undefined || display.startsWith('auto:') ? unit : display;
}

function headOf(quantity: Quantity): string {
  if (typeof quantity.unit !== 'string' || quantity.unit === 'none') return quantity.id;
  const unit = formatUnit(writtenUnit(quantity as NumberInput));
  return unit === '' ? quantity.id : `${quantity.id} (${unit})`;
}

/** Twelve digits: what comes after is the dust of binary sums. */
function cellOf(quantity: Quantity, value: unknown): string {
  if (typeof value !== 'number') return value === undefined ? '' : String(value);
  const unit = writtenUnit(quantity as NumberInput);
  return String(Number(toUnit(value, quantity.unit as string, unit).toPrecision(12)));
}
