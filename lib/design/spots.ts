import { derived, file, list } from '../graph/define.ts';
import type { NamedSpots } from '../measured/spotTable.ts';
import { Problem } from '../problem.ts';
import type { SpotMark } from '../process/spotMark.ts';
import { workpieceZ } from './focus.ts';
import { repetitionRate } from './laser.ts';
import { leftOutReason, leftOutRow, linesOf } from './leftOut.ts';

/** Units of the fields of a table of spots. */
export const tableUnit = {
  name: 'none',
  rows: {
    row: '1',
    energy: 'J',
    power: 'W',
    area: 'm^2',
    areaUncertainty: 'm^2',
    diameters: 'm',
    innerDiameter: 'm',
    pulses: '1',
    z: 'm',
    plate: 'none',
  },
  bad: 'none',
  unmeasured: '1',
  ignored: 'none',
} as const;

export const spotTable = file<NamedSpots>({
  id: 'threshold.spotTable',
  name: 'table of measured spots',
  symbol: '\\text{spots}',
  unit: tableUnit,
  about:
    'Single spots measured under a microscope: a row a mark, with the pulse energy where it is measured, before the losses of the design (or the average power), two diameters, one diameter or the area, and where they differ the pulses N and z, as in "energy (µJ); dx (µm); dy (µm); N; z (mm)". A size of 0 says that no mark was seen.',
  shownAs: ({ name, rows }) => `${name}, ${rows.length} ${rows.length === 1 ? 'mark' : 'marks'}`,
});

export const leftOut = list({
  id: 'threshold.leftOut',
  name: 'rows left out of the table of spots',
  symbol: '\\text{left out}',
  about: 'Rows of the table of spots that do not count, each with its line and the reason.',
  of: [leftOutRow, leftOutReason],
  most: 500,
  shownAs: (items) => (items.length === 0 ? 'none' : `${items.length}`),
});

/** The problem of a fit without a table. */
export function noSpots(): Problem {
  return new Problem(
    'absent',
    'No table of measured spots has been given yet: choose one or paste it, as in "energy (µJ); dx (µm); dy (µm)".',
    { input: spotTable.id },
  );
}

export const spots = derived({
  id: 'threshold.spots',
  name: 'spots of the table',
  symbol: '(P_i\\text{ or }E_i, A_i)',
  unit: tableUnit,
  about: 'The rows of the table of spots as read, those in error and those left out among them.',
  from: { table: spotTable },
  compute: ({ table }): NamedSpots => {
    if (table === null) throw noSpots();
    return table;
  },
  shownAs: ({ rows }) => `${rows.length} ${rows.length === 1 ? 'mark' : 'marks'}`,
  formula: '\\text{spots}',
  source: 'definition',
});

export const usedMarks = derived({
  id: 'threshold.usedMarks',
  name: 'marks that count',
  symbol: '(E_i, A_i)',
  unit: {
    row: '1',
    energy: 'J',
    area: 'm^2',
    areaUncertainty: 'm^2',
    pulses: '1',
    z: 'm',
    diameters: 'm',
  },
  about:
    'Marks of the table of spots that are not left out: energy, marked area, pulses and plane of each. Powers become energies by the repetition rate; marks without z lie in the plane of the workpiece.',
  from: { table: spots, leftOut, rate: repetitionRate, z: workpieceZ },
  compute: ({ table, leftOut, rate, z }): readonly SpotMark[] => {
    const out = linesOf(leftOut);
    checkBadRows(table, out);
    const marks = table.rows.filter(({ row }) => !out.has(row));
    if (marks.length === 0) throw noneCounts(table);
    return marks.map(({ power = 0, energy = power / rate, innerDiameter: _inner, ...mark }) => ({
      z,
      ...mark,
      energy,
    }));
  },
  shownAs: (marks) => `${marks.length} ${marks.length === 1 ? 'mark' : 'marks'}`,
  formula:
    '\\text{spots}\\setminus\\text{left out},\\ E=P/f_\\text{rep}\\text{ for powers},\\ z\\text{ where none}',
  source: 'definition',
});

/** A row in error counts, and stops the fits, until it is left out. */
function checkBadRows({ bad, name }: NamedSpots, out: ReadonlySet<number>): void {
  const first = bad.find(({ row }) => !out.has(row));
  if (!first) return;
  const { row, column, problem } = first;
  throw new Problem('unreadable', `"${name}": ${problem} Or leave row ${row} out here, with the reason.`, {
    input: spotTable.id,
    row,
    column,
  });
}

function noneCounts({ rows, unmeasured }: NamedSpots): Problem {
  if (rows.length > 0) {
    return new Problem('absent', 'All rows of the table of spots are left out. Take some of them back in.', {
      input: leftOut.id,
    });
  }
  return new Problem(
    'absent',
    `None of the ${unmeasured.length} rows of the table of spots has a size yet. Measure the marks and write their diameters, 0 where none is seen.`,
    { input: spotTable.id },
  );
}
