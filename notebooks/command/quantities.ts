import type { Quantity } from '../../lib/graph/quantity.ts';
import { rangeText, shownValue } from '../../lib/graph/shown.ts';
import type { CommandIo } from './commandIo.ts';
import { designOptions, graphOf, openDesign } from './openDesign.ts';
import { readOptions } from './options.ts';

/** `quantities`: one line a quantity, of a design file its own ones too: id, unit, initial value or formula, meaning; tab-separated. */
export function listQuantities(args: readonly string[], io: CommandIo): string {
  const options = readOptions(args, [...designOptions]);
  const lines = [...graphOf(openDesign(options, io)).quantities.values()]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((quantity) => [quantity.id, unitText(quantity), origin(quantity), quantity.about].join('\t'));
  return `${['id\tunit\tinitial value and range, or formula\tmeaning', ...lines].join('\n')}\n`;
}

function unitText(quantity: Quantity): string {
  return typeof quantity.unit === 'string' ? quantity.unit : JSON.stringify(quantity.unit);
}

function origin(quantity: Quantity): string {
  switch (quantity.kind) {
    case 'number':
      return `${shownValue(quantity, { value: quantity.initial })} (${rangeText(quantity)})`;
    case 'choice':
      return `${quantity.initial} (${Object.keys(quantity.options).join(' | ')})`;
    case 'file':
      return 'none (read from a file)';
    case 'list':
      return `none (up to ${quantity.most}, read from files)`;
    case 'constant':
      return `constant ${shownValue(quantity, { value: quantity.value })}`;
    case 'derived':
      return quantity.formula;
  }
}
