import { hasValue, type ProblemNote } from '../../lib/graph/outcome.ts';
import { blockQuantities } from '../blockQuantities.ts';
import type { ChoicesSpec } from '../choicesSpec.ts';
import { conditionHolds } from '../condition.ts';
import type { Block, FigureSpec, TableSpec } from '../document.ts';
import { type From, readValues } from '../prose.ts';
import type { RowsSpec } from '../rowsSpec.ts';
import type { PaperBlock, Run } from './paper.ts';
import { lackingInProse, type ProseStyle, writtenProse } from './writtenProse.ts';
import { type Told, writtenValue } from './writtenValue.ts';

/** True where a document would show the block: its condition holds and what it needs has a value. */
export function isShown({ when, needs = [] }: Block, told: Told): boolean {
  const holds = when === undefined || conditionHolds(when, told.inputs);
  return holds && needs.every((quantity) => hasValue(told.outcomeOf(quantity)));
}

/** A block of a document as blocks of a paper; what can only be worked with on a page has none. */
export function writtenBlock(block: Block, told: Told, style: ProseStyle = {}): PaperBlock[] {
  if (!isShown(block, told)) return [];
  switch (block.kind) {
    case 'prose':
      return writtenProse(block.prose, told, style);
    case 'caution':
      return writtenProse(block.prose, told, { ...style, role: 'caution' });
    case 'figure':
      return readFor(block.from, told, (values) => [figureOf(block.id, block.view(values), block.shape)]);
    case 'figures':
      return readFor(block.from, told, (values) =>
        block.view(values).map((spec, i) => figureOf(`${block.id}-${i + 1}`, spec)),
      );
    case 'table':
      return tableOf(block.table, told);
    case 'choices':
      return readFor(block.from, told, (values) => choicesOf(block.view(values)));
    case 'rows':
      return readFor(block.from, told, (values) => rowsOf(block.view(values)));
    case 'controls':
    case 'picture':
    case 'tool':
    case 'question':
      return [];
  }
}

/** Why the block, or a part of it, is left out although a document would show it. */
export function lackingIn(block: Block, told: Told): ProblemNote[] {
  if (!isShown(block, told)) return [];
  if (block.kind === 'prose' || block.kind === 'caution') return lackingInProse(block.prose, told);
  return blockQuantities(block).flatMap((quantity) => {
    const outcome = told.outcomeOf(quantity);
    return hasValue(outcome) ? [] : [outcome.problem];
  });
}

function readFor(
  from: From,
  told: Told,
  write: (values: Readonly<Record<string, unknown>>) => PaperBlock[],
): PaperBlock[] {
  const read = readValues(from, (quantity) => told.outcomeOf(quantity));
  return 'values' in read ? write(read.values) : [];
}

function figureOf(id: string, spec: FigureSpec, shape: 'wide' | 'tall' = 'wide'): PaperBlock {
  // Nothing moves on paper, and what moves holds more than plain data.
  const { moves: _, hint: __, ...still } = spec;
  return { kind: 'figure', id, spec: still, shape, caption: `${spec.title}. ${spec.summary}` };
}

const words = (text: string): Run[] => (text === '' ? [] : [{ text }]);

/** A table; rows of quantities of which none has a value are left out. */
export function tableOf({ caption, columns, rows }: TableSpec, told: Told): PaperBlock[] {
  const written = rows.flatMap((row) => {
    const quantities = row.filter((cell) => typeof cell !== 'string');
    const known = quantities.some((quantity) => hasValue(told.outcomeOf(quantity)));
    if (quantities.length > 0 && !known) return [];
    const cells = row.map((cell): Run[] => {
      if (typeof cell === 'string') return words(cell);
      const text = writtenValue(cell, told);
      return hasValue(told.outcomeOf(cell)) ? [{ text, quantity: cell.id }] : [{ text }];
    });
    return [cells];
  });
  return written.length === 0 ? [] : [{ kind: 'table', caption, columns, rows: written }];
}

/** A list to choose from: what is chosen is in bold type and said so. */
function choicesOf({ caption, columns, rows, summary }: ChoicesSpec): PaperBlock[] {
  const lines = rows.map(({ name, cells, chosen }): Run[][] =>
    [chosen ? `${name} (chosen)` : name, ...cells].map((text) =>
      text === '' ? [] : [chosen ? { text, strong: true } : { text }],
    ),
  );
  const table: PaperBlock[] = lines.length === 0 ? [] : [{ kind: 'table', caption, columns, rows: lines }];
  return [...table, ...(summary === '' ? [] : [{ kind: 'paragraph', runs: words(summary) } as const])];
}

function rowsOf({ caption, columns, rows, reasons, summary }: RowsSpec): PaperBlock[] {
  const lines = rows.map(({ name, cells, problem, reason }): Run[][] => {
    const filled = problem === undefined ? cells : [problem, ...columns.slice(3).map(() => '')];
    const counts = reason !== undefined ? `no: ${reasons[reason] ?? reason}` : problem ? 'no' : 'yes';
    return [name, ...filled, counts].map(words);
  });
  const table: PaperBlock[] = lines.length === 0 ? [] : [{ kind: 'table', caption, columns, rows: lines }];
  return [...table, ...(summary === '' ? [] : [{ kind: 'paragraph', runs: words(summary) } as const])];
}
