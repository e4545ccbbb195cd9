import type { ChoiceInput, NumberInput } from '../graph/quantity.ts';
import type { Patch } from '../graph/state.ts';
import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { type DelimitedTable, readDelimitedTable, readNumber } from '../measured/delimitedTable.ts';
import { checkRow, splitHeader } from '../measured/tableHeader.ts';
import { Problem } from '../problem.ts';
import { expanderKind, magnification } from './expander.ts';
import { createPart, inputsOfKind, type PartKind } from './ownParts.ts';
import { inPlace, type PartsFile } from './ownPartsFile.ts';
import { addPart, type OwnParts } from './ownPartsList.ts';

/** A column that is understood: what it holds, and a number's unit. */
interface Column {
  readonly index: number;
  readonly holds: 'name' | 'note' | NumberInput | ChoiceInput;
  readonly unit: string;
}

/**
 * Reads parts of one kind from a text table: a header line, then a line a part. Columns: `name`, `note` where wanted,
 * and the inputs by their name or id with the unit behind it, as in "name; focal length (mm)". An empty cell leaves the
 * value out. Other columns are reported. Throws a Problem that names line and column, and then none of it counts.
 */
export function readPartsTable(kind: PartKind, text: string, fileName: string): PartsFile {
  // A part may be called "# 3": no line is a comment.
  const table = readDelimitedTable(text, `'${fileName}'`, false);
  const unknown: string[] = [];
  const columns = table.rows[0]!.flatMap((cell, index) => readColumn(kind, cell, index, fileName, unknown));
  if (!columns.some(({ holds }) => holds === 'name')) throw noNames(kind, fileName);
  let parts: OwnParts = [];
  for (let row = 1; row < table.rows.length; row++) {
    const { name, note, values } = inPlace(`'${fileName}'`, () => readRow(table, row, columns));
    parts = inPlace(`'${fileName}', row ${table.lines[row]}`, () =>
      addPart(parts, createPart(kind, name, kind === 'expander' ? withKind(values) : values, note)),
    );
  }
  if (parts.length > 0) return { parts, unknown };
  throw new Problem(
    'unreadable',
    `'${fileName}' has a header and no row below it. Add a row for each ${kind}.`,
  );
}

function readColumn(
  kind: PartKind,
  cell: string,
  index: number,
  fileName: string,
  unknown: string[],
): Column[] {
  const { name, unit } = splitHeader(cell);
  if (name === 'name' || name === 'note') return [{ index, holds: name, unit: '' }];
  const input = inputsOfKind(kind).find((one) => [plain(one.name), plain(one.id)].includes(name));
  if (!input) {
    if (cell !== '') unknown.push(`column ‘${cell}’`);
    return [];
  }
  if (input.kind === 'choice') return [{ index, holds: input, unit: '' }];
  const known = isKnownUnit(unit) && sameDimensions(dimensionsOf(unit), dimensionsOf(input.unit));
  if (known) return [{ index, holds: input, unit: unit === '' ? '1' : unit }];
  throw new Problem(
    'unreadable',
    `'${fileName}', row 1, column ${cell} names no unit of the ${input.name}. Write it behind the name, as in "${input.name} (${input.display ?? input.unit})".`,
    { row: 1, column: cell, input: input.id },
  );
}

/** As `splitHeader` gives names. */
function plain(name: string): string {
  return splitHeader(name).name;
}

function noNames(kind: PartKind, fileName: string): Problem {
  const wanted = inputsOfKind(kind).find((input) => input.kind === 'number')!;
  return new Problem(
    'unreadable',
    `'${fileName}', row 1 names no column ‘name’. Begin with a line such as "name; ${wanted.name} (${wanted.display ?? wanted.unit})".`,
    { row: 1, column: 'name' },
  );
}

function readRow(table: DelimitedTable, row: number, columns: readonly Column[]) {
  checkRow(table, row, table.rows[0]!.length);
  const read = { name: '', note: '', values: {} as Record<string, unknown> };
  for (const { index, holds, unit } of columns) {
    const cell = table.rows[row]![index] ?? '';
    if (typeof holds === 'string') read[holds] = cell;
    else if (cell === '') continue;
    else if (holds.kind === 'choice') read.values[holds.id] = optionOf(holds, cell);
    else read.values[holds.id] = fromUnit(readNumber(table, row, index, holds.name), holds.unit, unit);
  }
  return read;
}

/** Which description of an expander a row gives shows by its magnification, where no column says so. */
function withKind(values: Patch): Patch {
  const described = Object.hasOwn(values, magnification.id) ? 'magnification' : 'lenses';
  return { [expanderKind.id]: described, ...values };
}

/** An option by its key or its words; what is neither stays as it is and is refused with the list of options. */
function optionOf({ options }: ChoiceInput, cell: string): string {
  const same = (text: string) => text.toLowerCase() === cell.toLowerCase();
  return Object.keys(options).find((key) => same(key) || same(options[key]!)) ?? cell;
}
