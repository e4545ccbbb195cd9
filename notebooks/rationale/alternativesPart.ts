import { hasValue } from '../../lib/graph/outcome.ts';
import { isInput, type Quantity } from '../../lib/graph/quantity.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import type { PaperBlock, Run } from '../paper/paper.ts';
import { type Told, writtenValue } from '../paper/writtenValue.ts';
import { listed } from '../shortTexts.ts';
import { keyNumbers } from './keyNumbers.ts';
import type { ToldAlternative, ToldDesign } from './told.ts';

/** Designs beside today's for which a table has room. */
const mostBeside = 3;

/** The alternatives that were kept, beside the design: inputs that differ, and the numbers that decide. */
export function alternativeBlocks(told: ToldDesign): PaperBlock[] {
  const { alternatives } = told;
  if (alternatives.length === 0)
    return [
      { kind: 'paragraph', role: 'note', runs: [{ text: 'No alternative has been kept with this design.' }] },
    ];
  const about = alternatives
    .filter((one) => one.about !== '')
    .map((one): Run[] => [{ text: one.name, strong: true }, { text: `: ${one.about}` }]);
  const reasons: PaperBlock[] = about.length === 0 ? [] : [{ kind: 'list', ordered: false, items: about }];
  const groups = Array.from({ length: Math.ceil(alternatives.length / mostBeside) }, (_, i) =>
    alternatives.slice(i * mostBeside, (i + 1) * mostBeside),
  );
  return [...reasons, ...groups.flatMap((group) => comparedBlocks(told, group))];
}

function comparedBlocks(told: ToldDesign, group: readonly ToldAlternative[]): PaperBlock[] {
  const inputs = told.graph.order
    .filter(isInput)
    .filter(({ id }) => group.some((one) => !Object.is(one.inputs[id], told.inputs[id])));
  const results = keyNumbers(told).filter((quantity) => differs(quantity, told, group));
  const names = listed(group.map(({ name }) => `‘${name}’`));
  const columns = ['number', 'this design', ...group.map(({ name }) => name)];
  const tableOf = (caption: string, list: readonly Quantity[]): PaperBlock[] =>
    list.length === 0
      ? []
      : [{ kind: 'table', caption, columns, rows: list.map((one) => rowOf(one, told, group)) }];
  const same: PaperBlock[] =
    inputs.length > 0
      ? []
      : [{ kind: 'paragraph', runs: [{ text: `No input of ${names} differs from this design.` }] }];
  return [
    ...same,
    ...tableOf(`Inputs in which ${names} ${group.length === 1 ? 'differs' : 'differ'}`, inputs),
    ...tableOf('What follows from that', results),
  ];
}

const shownIn = (quantity: Quantity, told: Told) => shownValue(quantity, told.outcomeOf(quantity));

function differs(quantity: Quantity, told: Told, group: readonly Told[]): boolean {
  return group.some((one) => shownIn(quantity, one) !== shownIn(quantity, told));
}

/** Only today's value is the one that page and command line show of the quantity. */
function rowOf(quantity: Quantity, told: ToldDesign, group: readonly Told[]): (readonly Run[])[] {
  const known = hasValue(told.outcomeOf(quantity));
  return [
    [{ text: quantity.name }],
    [{ text: writtenValue(quantity, told), ...(known ? { quantity: quantity.id } : {}) }],
    ...group.map((one): Run[] => [{ text: writtenValue(quantity, one) }]),
  ];
}
