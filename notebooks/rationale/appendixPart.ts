import { type Derived, enteredIn, type Quantity, sourceOf } from '../../lib/graph/quantity.ts';
import { citation, sourceKeys } from '../../lib/materials/bibliography.ts';
import { equationTex } from '../equationTex.ts';
import { inputGroups } from '../inputGroups.ts';
import type { PaperBlock, Run } from '../paper/paper.ts';
import { writtenValue } from '../paper/writtenValue.ts';
import type { ToldDesign } from './told.ts';

/** All inputs that count, a table for each element of the beam path. */
export function inputBlocks(told: ToldDesign): PaperBlock[] {
  return inputGroups(told.inputs).map(
    ({ heading, inputs }): PaperBlock => ({
      kind: 'table',
      caption: `Inputs: ${heading}`,
      columns: ['input', 'value', 'id'],
      rows: inputs.map((input) => [
        [{ text: input.name }],
        [{ text: writtenValue(input, told), quantity: input.id }],
        [{ text: input.id }],
      ]),
    }),
  );
}

/** The person's own formula lines as they were typed. */
export function ownLineBlocks(told: ToldDesign): PaperBlock[] {
  const { ownLines } = told.studies;
  if (ownLines.length === 0) return [];
  const rows = ownLines.map(({ id, name, formula, about = '' }): (readonly Run[])[] => {
    const quantity = told.graph.quantities.get(id);
    const value: Run = quantity ? valueRun(quantity, told) : { text: '—' };
    return [[{ text: name }], [{ text: formula }], [value], about === '' ? [] : [{ text: about }]];
  });
  return [
    { kind: 'table', caption: 'Own quantities', columns: ['number', 'formula', 'value', 'about'], rows },
  ];
}

function valueRun(quantity: Quantity, told: ToldDesign): Run {
  const text = writtenValue(quantity, told);
  return text === '—' ? { text } : { text, quantity: quantity.id };
}

/** The formula of each number shown, with its source. */
export function formulaBlocks(told: ToldDesign, shown: readonly Quantity[]): PaperBlock[] {
  const derived = shown.filter((quantity): quantity is Derived => quantity.kind === 'derived');
  if (derived.length === 0) return [];
  // What is worked out alike for several numbers stands there once.
  const alike = new Map<string, Derived[]>();
  for (const quantity of derived) {
    const tex = equationOf(quantity, told);
    alike.set(tex, [...(alike.get(tex) ?? []), quantity]);
  }
  const rows = [...alike].map(([tex, [first, ...others]]): (readonly Run[])[] => [
    [{ text: `${[first!, ...others].map(({ name }) => name).join('; ')}: ` }, sourceRun(first!, told)],
    [{ tex }],
  ]);
  return [
    {
      kind: 'table',
      caption: 'Formulas, and where they are from',
      columns: ['number, and source', 'formula'],
      rows,
    },
  ];
}

function equationOf(quantity: Derived, told: ToldDesign): string {
  const formula = enteredIn(quantity, (other) => told.outcomeOf(other)).formula ?? quantity.formula;
  return equationTex(quantity.symbol, formula);
}

const published = new Set(sourceKeys());

function sourceRun(quantity: Derived, told: ToldDesign): Run {
  const key = sourceOf(quantity, (other) => told.outcomeOf(other));
  if (key === undefined) return { text: 'typed, without a source' };
  return published.has(key) ? { cite: key } : { text: citation(key) };
}
