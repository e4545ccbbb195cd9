import { Problem } from '../problem.ts';
import { type DelimitedTable, readNumber } from './delimitedTable.ts';
import { checkSize, type Raster } from './raster.ts';

/** Cells looked at to tell numbers from prose. */
const sample = 200;

/** True where at least half of the first cells that are filled hold a number, whatever its decimal sign. */
export function looksLikeNumbers({ rows }: DelimitedTable): boolean {
  const filled = rows
    .slice(0, sample)
    .flatMap((row) => row.slice(0, sample))
    .filter((cell) => cell !== '')
    .slice(0, sample);
  const numbers = filled.filter((cell) => /^[-+−]?[\d.,]*\d[.,]?(e[-+]?\d+)?$/i.test(cell));
  return 2 * numbers.length >= filled.length;
}

/**
 * Reads an image written as a table of numbers, one line a row of pixels, no header: separators and
 * decimal signs as in `readDelimitedTable`. Throws Problem 'unreadable' naming row and column.
 */
export function readCsvImage(table: DelimitedTable, name: string): Raster {
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
