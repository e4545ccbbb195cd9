import { Problem } from '../problem.ts';
import type { DelimitedTable } from './delimitedTable.ts';
import type { HeaderCell } from './tableHeader.ts';

const names = ['plate', 'withplate', 'platein', 'phaseplate', 'platte', 'phasenplatte', 'mitplatte'];

const words: ReadonlyMap<string, boolean> = new Map([
  ...['1', 'in', 'with', 'yes', 'true', 'on', 'mit', 'ja'].map((word) => [word, true] as const),
  ...['0', 'out', 'without', 'no', 'false', 'off', 'none', 'ohne', 'nein'].map(
    (word) => [word, false] as const,
  ),
]);

/** The column that says whether the plate was in, whatever stands behind its name; undefined where there is none. */
export function findPlateColumn(header: readonly HeaderCell[]): number | undefined {
  const index = header.findIndex(({ name }) => names.includes(name));
  return index < 0 ? undefined : index;
}

/** Whether a row was made with the plate in. Throws Problem 'unreadable' naming row and column for any other word. */
export function readPlateCell(table: DelimitedTable, i: number, column: number, name: string): boolean {
  const cell = table.rows[i]![column] ?? '';
  const found = words.get(cell.trim().toLowerCase());
  if (found !== undefined) return found;
  const row = table.lines[i]!;
  throw new Problem(
    'unreadable',
    `Row ${row}, column ${name} ${cell === '' ? 'is empty' : `holds "${cell.slice(0, 40)}"`}: 1 with the plate or 0 without it is needed there. Correct the cell or delete the row.`,
    { row, column: name, value: cell, allowed: '1 or 0' },
  );
}
