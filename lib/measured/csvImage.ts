import { Problem } from '../problem.ts';
import { type DelimitedTable, readDelimitedTable, readNumber } from './delimitedTable.ts';
import { checkSize, type Raster } from './raster.ts';

/**
 * Reads an image written as a table of numbers, one line a row of pixels, no header: separators and
 * decimal signs as in `readDelimitedTable`. Throws Problem 'unreadable' naming row and column.
 */
export function readCsvImage(text: string, name: string): Raster {
  const table = readDelimitedTable(text, `"${name}"`);
  const height = table.rows.length;
  const width = countColumns(table);
  checkSize(name, width, height);
  const samples = new Float64Array(width * height);
  for (let row = 0; row < height; row++) {
    checkLength(table, row, width);
    for (let column = 0; column < width; column++)
      samples[row * width + column] = readNumber(table, row, column);
  }
  return { width, height, samples, fullScale: undefined };
}

/** Programs end each line with a separator; an empty last column is not a column. */
function countColumns(table: DelimitedTable): number {
  const first = table.rows[0]!;
  return first.at(-1) === '' ? first.length - 1 : first.length;
}

function checkLength(table: DelimitedTable, row: number, width: number): void {
  const cells = table.rows[row]!;
  const length = cells.length === width + 1 && cells.at(-1) === '' ? width : cells.length;
  if (length === width) return;
  const line = table.lines[row]!;
  throw new Problem(
    'unreadable',
    `Row ${line} has ${length} columns where the first row has ${width}: every row of an image is equally long. Row ${line}, column ${Math.min(length, width) + 1} is where they part; save the image again.`,
    { row: line, column: String(Math.min(length, width) + 1), allowed: `${width} columns` },
  );
}
