import { type MarkForTable, newTableHeader, rowOfMark } from '../lib/design/markRow.ts';
import { spotTable } from '../lib/design/spots.ts';
import { originalOf } from '../lib/graph/originals.ts';
import type { Patch } from '../lib/graph/state.ts';
import type { NamedSpots } from '../lib/measured/spotTable.ts';
import { Problem } from '../lib/problem.ts';
import { decodeText } from './fileText.ts';
import { readFileAsPatch } from './measuredFiles.ts';

/** Name of a table that was begun here. */
const begun = 'marks in pictures.csv';

/** The text of the table, or the header of one that is begun; throws a Problem where the file is not at hand. */
function textOf(table: NamedSpots | null): string {
  if (table === null) return `${newTableHeader}\n`;
  const file = originalOf(table);
  if (file) return decodeText(file.bytes);
  throw new Problem(
    'impossible',
    `The file of "${table.name}" is not at hand. Give the table of spots again.`,
  );
}

/** The row of the mark in the format of the table, of a new one where there is none, and whether it stands there last. */
export function markRow(
  mark: MarkForTable,
  table: NamedSpots | null,
): { readonly row: string; readonly standsLast: boolean } {
  const text = textOf(table);
  const row = rowOfMark(mark, text);
  const lines = text.trimEnd().split(/\r\n?|\n/);
  return { row, standsLast: lines.at(-1) === row };
}

/**
 * The table with the mark as one more row, begun where there is none; what was left out stays so. Throws a Problem where
 * the table has no room for it, or holds it as its last row.
 */
export function addMark(mark: MarkForTable, table: NamedSpots | null): Patch {
  const { row, standsLast } = markRow(mark, table);
  if (standsLast) throw new Problem('impossible', 'This mark is the last row of the table of spots already.');
  const bytes = new TextEncoder().encode(`${textOf(table).trimEnd()}\n${row}\n`);
  return { [spotTable.id]: readFileAsPatch(spotTable.id, bytes, nameOf(table))[spotTable.id] };
}

/** The table is no longer the file of that name. */
function nameOf(table: NamedSpots | null): string {
  if (table === null) return begun;
  const [, stem, ending] = /^(.*?)(?: and pictures)?(\.\w+)?$/.exec(table.name)!;
  return table.name === begun ? begun : `${stem} and pictures${ending ?? ''}`;
}
