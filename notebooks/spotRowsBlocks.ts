import { repetitionRate } from '../lib/design/laser.ts';
import { leaveOut, leftOutReason, reasonOf } from '../lib/design/leftOut.ts';
import { leftOut, spots, spotTable } from '../lib/design/spots.ts';
import type { ListItem } from '../lib/graph/quantity.ts';
import { formatQuantity, formatReadable } from '../lib/graph/units.ts';
import type { BadRow, NamedSpots, SpotRow } from '../lib/measured/spotTable.ts';
import type { Block } from './document.ts';
import { prose } from './prose.ts';
import { rows } from './rowsBlock.ts';
import type { CountedRow, RowsSpec } from './rowsSpec.ts';
import { spotColumnsSaid, spotEmptySaid, spotEnergySaid, spotPlaceSaid } from './spotTableSentences.ts';

/** A page of more rows is slow, and nobody reads them; rows in error and rows left out are always listed. */
const mostRows = 300;

/** A column of the list: its heading and the text of a cell. */
type Column = readonly [heading: string, text: (row: SpotRow) => string];

const micrometres = (length: number) => formatReadable(length, 'm', 'um', 4);

function sizeText({ diameters, innerDiameter, area }: SpotRow): string {
  if (area === 0) return 'no mark';
  if (!diameters) return '—';
  const [x, y] = diameters.map((length) => formatQuantity(length, 'm', 'um'));
  const outer = x === y ? x! : `${x!.replace(/\s.*$/, '')} × ${y}`;
  return innerDiameter === undefined ? outer : `${outer}, hollow ${micrometres(innerDiameter)}`;
}

function areaText({ area, areaUncertainty }: SpotRow): string {
  const show = (value: number) => formatQuantity(value, 'm^2', 'um^2', 3);
  return areaUncertainty === undefined ? show(area) : `${show(area)} ± ${show(areaUncertainty)}`;
}

/** The columns that the table has something in. */
function columnsOf(table: NamedSpots, rate: number): Column[] {
  const some = (has: (row: SpotRow) => boolean) => table.rows.some(has);
  const energy = ({ power = 0, energy = power / rate }: SpotRow) => formatQuantity(energy, 'J', 'auto:J');
  const all: (Column | false)[] = [
    some(({ power }) => power !== undefined) && [
      'power',
      ({ power = 0 }) => formatQuantity(power, 'W', 'auto:W'),
    ],
    ['energy', energy],
    some(({ diameters }) => diameters !== undefined) && ['diameter', sizeText],
    ['area', areaText],
    some(({ pulses }) => pulses !== 1) && ['pulses', ({ pulses }) => formatQuantity(pulses, '1', '1', 6)],
    some(({ z }) => z !== undefined) && ['z', ({ z = 0 }) => formatReadable(z, 'm', 'mm', 4)],
  ];
  return all.filter((column) => column !== false);
}

/** Rows as they are listed: in order of their lines, the many cut short. */
function listed(table: NamedSpots, items: readonly ListItem[]): (SpotRow | BadRow)[] {
  const always = (row: SpotRow | BadRow) => 'problem' in row || reasonOf(row.row, items) !== undefined;
  const all = [...table.rows, ...table.bad].sort((a, b) => a.row - b.row);
  let free = mostRows;
  return all.filter((row) => always(row) || free-- > 0);
}

function summaryOf(table: NamedSpots, items: readonly ListItem[], shown: number): string {
  const all = [...table.rows, ...table.bad];
  const out = all.filter(({ row }) => reasonOf(row, items) !== undefined).length;
  const bad = table.bad.filter(({ row }) => reasonOf(row, items) === undefined).length;
  const parts = [
    `${all.length - out - bad} of ${all.length} rows count`,
    out > 0 && `${out} left out`,
    bad > 0 && `${bad} in error, to be corrected in the file or left out before anything is fitted`,
    shown < all.length && `${all.length - shown} more rows are not listed`,
  ].filter((part) => part !== false);
  return `${parts.join('; ')}.`;
}

/** What the page lists of a table of spots. */
export function spotRows(table: NamedSpots, items: readonly ListItem[], rate: number): RowsSpec {
  const columns = columnsOf(table, rate);
  const lines = listed(table, items);
  const rowOf = (line: SpotRow | BadRow): CountedRow => ({
    name: `row ${line.row}`,
    ...('problem' in line
      ? { cells: [], problem: line.problem }
      : { cells: columns.map(([, text]) => text(line)) }),
    reason: reasonOf(line.row, items),
    patch: (reason) => ({ [leftOut.id]: leaveOut(line.row, reason, items) }),
  });
  return {
    caption: `Spots in "${table.name}"`,
    columns: ['', ...columns.map(([heading]) => heading), 'counts'],
    rows: lines.map(rowOf),
    reasons: Object.fromEntries(
      Object.entries(leftOutReason.options).map(([key, words]) => [key, `left out: ${words}`]),
    ),
    in: { good: 'counts', bad: 'in error' },
    summary: summaryOf(table, items, lines.length),
  };
}

/** The table of spots, row by row. */
const spotRowsBlock = rows({
  id: 'spot-rows',
  needs: [spots],
  from: { table: spots, items: leftOut, rate: repetitionRate },
  view: ({ table, items, rate }) => spotRows(table, items, rate),
});

/** A table of measured spots: where it is given, what is read from it, and its rows. */
export const spotTableBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'spot-table',
    prose: prose`
      ## The table of measured spots

      Fire single spots at several energies, each energy several times, measure the marks under a microscope, and give the table: a heading with units and a row a mark, as in *energy (µJ); dx (µm); dy (µm)*. One diameter or the area will do, the average power in place of the energy too; columns *N* for the pulses on a place and *z (mm)* may stand beside them. Write 0 where no mark is seen: it says as much as a mark.
    `,
  },
  { kind: 'controls', id: 'spot-table-controls', heading: 'Measured spots', inputs: [spotTable] },
  {
    kind: 'prose',
    id: 'spot-table-said',
    needs: [spots],
    prose: prose`${spotEnergySaid} ${spotPlaceSaid} ${spotColumnsSaid} ${spotEmptySaid}`,
  },
  spotRowsBlock,
];
