import { numeric } from './tableHeader.ts';

/** What instruments write where a point was not measured. */
const missingCells = new Set([
  ...['', 'nan', 'n/a', '#n/a', 'na', 'null', 'none', 'nodata', 'bad', 'invalid', 'inf', '-inf', '+inf'],
  ...['1.#qnan', '-1.#ind', '1.#inf'],
]);

/** True for a cell that says that the point was not measured: empty, NaN, ***, ---. */
export function isMissing(cell: string): boolean {
  return missingCells.has(cell.toLowerCase().replace(/\s+/g, '')) || /^(\*+|-{1,5}|\?+|\.{2,})$/.test(cell);
}

/** Rows of numbers one after the other that begin the table, below whatever the instrument wrote before. */
const firstRun = 3;

/**
 * The text with all lines emptied that stand above the header of its table: what an instrument says of itself before it.
 * Lines keep their numbers. The header is the last line above the first three rows of numbers, with the one before it
 * where it holds units alone, as `isUnit` knows them.
 */
export function withoutPreamble(text: string, isUnit: (text: string) => boolean): string {
  const lines = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .split('\n');
  const filled = [...lines.keys()].filter((i) => lines[i]!.trim() !== '');
  const from = filled.findIndex((_, k) =>
    isRunOfNumbers(filled.slice(k, k + firstRun).map((i) => lines[i]!)),
  );
  if (from < 1) return text;
  const units = from >= 2 && holdsUnitsAlone(lines[filled[from - 1]!]!, isUnit);
  const header = filled[from - (units ? 2 : 1)]!;
  return lines.map((line, i) => (i < header && !/^sep=.$/i.test(line) ? '' : line)).join('\n');
}

function isRunOfNumbers(lines: readonly string[]): boolean {
  return lines.length === firstRun && lines.every(isRowOfNumbers);
}

/** At least two cells, the first a number, each of the others a number or missing. */
function isRowOfNumbers(line: string): boolean {
  const cells = cellsOf(line);
  const numbers = cells.filter((cell) => numeric.test(cell));
  return (
    cells.length > 1 &&
    numeric.test(cells[0]!) &&
    cells.every((cell) => numeric.test(cell) || isMissing(cell)) &&
    numbers.length > 0
  );
}

function holdsUnitsAlone(line: string, isUnit: (text: string) => boolean): boolean {
  const cells = cellsOf(line).map((cell) => cell.replace(/^[[(](.*)[\])]$/, '$1').trim());
  const filled = cells.filter((cell) => !/^[-–]?$/.test(cell));
  return filled.length > 0 && filled.every((cell) => !numeric.test(cell) && isUnit(cell));
}

/** Cells between the surest separator of the line: tab, semicolon, comma, spaces. */
function cellsOf(line: string): string[] {
  const separator = ['\t', ';', ','].find((sign) => line.includes(sign)) ?? /\s+/;
  return line
    .trim()
    .split(separator)
    .map((cell) => cell.replace(/^"(.*)"$/, '$1').trim());
}
