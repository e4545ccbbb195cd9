import { dsvFormat } from 'd3-dsv';
import { Problem } from '../problem.ts';

/** A text table as cells, with what was found out about its writing. */
export interface DelimitedTable {
  /** Cells of each line, trimmed, blank lines left out; row i stands in line `lines[i]` of the text. */
  readonly rows: readonly (readonly string[])[];
  /** Line number of each row, counted from 1. */
  readonly lines: readonly number[];
  readonly separator: ',' | ';' | '\t' | ' ';
  readonly decimal: '.' | ',';
  /** The last line of comment before the first row, without its sign, split as the rows; for tables whose header is one. */
  readonly comment?: { readonly cells: readonly string[]; readonly line: number };
}

/**
 * A line of comment: `#`, `%` or `//` with words behind it. The sign alone in a cell is the heading of a column, and "#3"
 * the number of a row; a PDF begins with its sign too.
 */
const commentLine = /^[ "]*(?:\/\/|[#%](?!\d|PDF-)(?= *[^ ;,\t"#]| *$))/;

/**
 * Splits a text table. Separator: tab where there is one, else semicolon, else comma, else spaces.
 * Decimal sign: the comma where the separator is not a comma and a number is written with one.
 * A byte order mark, CRLF and quoted cells are understood; lines of comment and a line that names the separator
 * ("sep=;") are left out, comments only where they are meant to be. Throws Problem 'unreadable' on an empty text.
 */
export function readDelimitedTable(text: string, name = 'The table', comments = true): DelimitedTable {
  const given = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .split('\n');
  const isComment = (line: string) => comments && commentLine.test(line);
  const isAside = (line: string, i: number) => isComment(line) || (i === 0 && /^sep=.$/i.test(line));
  // Left empty rather than out, so that rows keep the numbers of their lines.
  const plain = given.map((line, i) => (isAside(line, i) ? '' : line)).join('\n');
  const separator = ([`\t`, ';', ','] as const).find((sign) => plain.includes(sign)) ?? ' ';
  const split = (source: string) =>
    dsvFormat(separator).parseRows(separator === ' ' ? inSingleSpaces(source) : source, (row) =>
      row.map((cell) => cell.trim()),
    );
  const all = split(plain);
  const lines: number[] = [];
  const rows = all.filter((row, i) => {
    const filled = row.some((cell) => cell !== '');
    if (filled) lines.push(i + 1);
    return filled;
  });
  if (rows.length === 0) {
    throw new Problem('unreadable', `${name} is empty: it holds no line with a value. Choose another file.`);
  }
  const comma =
    separator !== ',' && rows.some((row) => row.some((cell) => /^[-+−]?\d*,\d+(e[-+]?\d+)?$/i.test(cell)));
  const last = given.findLastIndex((line, i) => i < lines[0]! - 1 && isComment(line));
  const comment = last >= 0 && {
    cells: split(given[last]!.replace(/^[ "]*(?:\/\/|[#%])+ *|"$/g, ''))[0] ?? [],
    line: last + 1,
  };
  return { rows, lines, separator, decimal: comma ? ',' : '.', ...(comment && { comment }) };
}

function inSingleSpaces(text: string): string {
  return text.replace(/^ +| +$/gm, '').replace(/ +/g, ' ');
}

const numberForm = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;

/**
 * The number in row `row` (index into `rows`) and column `column` (from 0) of a table.
 * `columnName` is used in the message, else the column's number. Throws Problem 'unreadable' naming line
 * and column where the cell is missing or not a finite number in the table's decimal sign.
 */
export function readNumber(table: DelimitedTable, row: number, column: number, columnName?: string): number {
  const cell = table.rows[row]?.[column] ?? '';
  const plain = (table.decimal === ',' ? swapComma(cell) : cell).replace('−', '-');
  const value = numberForm.test(plain) ? Number(plain) : Number.NaN;
  if (Number.isFinite(value)) return value;
  throw cellProblem(table, row, columnName ?? String(column + 1), cell);
}

/** A point in a table of decimal commas would be a thousands sign or a mistake: neither is guessed. */
function swapComma(cell: string): string {
  return cell.includes('.') ? 'mixed' : cell.replace(',', '.');
}

function cellProblem(table: DelimitedTable, row: number, column: string, cell: string): Problem {
  const line = table.lines[row] ?? row + 1;
  const found = cell === '' ? 'is empty' : `holds "${cell.slice(0, 40)}"`;
  const sign = table.decimal === ',' ? 'decimal comma' : 'decimal point';
  return new Problem(
    'unreadable',
    `Row ${line}, column ${column} ${found}: a number with ${sign} is needed there. Correct the cell or delete the row.`,
    { row: line, column, value: cell, allowed: `a number with ${sign}` },
  );
}
