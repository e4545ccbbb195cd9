import { derived, file, ifThere } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import type { NamedSpots, SpotRow } from '../measured/spotTable.ts';
import { Problem } from '../problem.ts';
import type { SpotMark } from '../process/spotMark.ts';
import { ladderRows } from './ladderInputs.ts';
import { ladderEnergy, unshapedLadderEnergy } from './ladderResults.ts';
import { repetitionRate } from './laser.ts';
import { tableUnit } from './spots.ts';

export const ladderTable = file<NamedSpots>({
  id: 'ladder.table',
  name: 'table of the measured ladder',
  symbol: '\\text{ladder}_\\text{m}',
  unit: tableUnit,
  about:
    'The marks of a focus ladder as measured under a microscope: a row a mark, with the reading of z and two diameters, one diameter or the area, as in "z (mm); dx (µm); dy (µm)". Columns plate (1 with it, 0 without it) and energy (µJ) may stand beside them. A size of 0 says that no mark was seen.',
  shownAs: ({ name, rows }) => `${name}, ${rows.length} ${rows.length === 1 ? 'place' : 'places'}`,
});

/** Marks of a ladder by what was in the beam. */
export interface LadderMarks {
  readonly shaped: readonly SpotMark[];
  readonly unshaped: readonly SpotMark[];
}

export const measuredLadder = derived({
  id: 'ladder.measured',
  name: 'ladder as read',
  symbol: '(z_i, A_i)',
  unit: tableUnit,
  about: 'The rows of the table of the ladder, every one of them readable.',
  from: { table: ladderTable },
  compute: ({ table }): NamedSpots => {
    if (table === null) throw noLadder();
    checkRows(table);
    return table;
  },
  shownAs: ({ rows }) => `${rows.length} ${rows.length === 1 ? 'place' : 'places'}`,
  formula: '\\text{ladder}_\\text{m}',
  source: 'definition',
});

/** Whether a row was made with the plate: as it says, else as the ladder is planned. */
export const madeWithPlate = ({ plate }: SpotRow, rows: string) => plate ?? rows !== 'without';

/** The energies of the plan where there are any: a table that gives its own needs none. */
const [shapedEnergy, unshapedEnergy] = [ladderEnergy, unshapedLadderEnergy].map((of) =>
  ifThere({
    of,
    id: `${of.id}There`,
    name: of.name,
    symbol: of.symbol,
    unit: 'J',
    display: 'uJ',
    digits: 3,
    about: `${of.about} Nothing where no ladder can be planned.`,
  }),
) as [Derived<number | null>, Derived<number | null>];

export const ladderMarks = derived({
  id: 'ladder.marks',
  name: 'marks of the ladder',
  symbol: '(z_i, E_i, A_i)',
  unit: 'none',
  about:
    'Marks of the ladder with the plate and without it: reading of z, energy and area. Where the table gives no energy the planned one counts; where it does not say whether the plate was in, it was, unless the ladder is planned without it.',
  from: {
    table: measuredLadder,
    rows: ladderRows,
    rate: repetitionRate,
    shapedEnergy,
    unshapedEnergy,
  },
  compute: ({ table, rows, rate, shapedEnergy, unshapedEnergy }): LadderMarks => {
    const markOf = (row: SpotRow): SpotMark => {
      const { power, innerDiameter: _inner, plate: _plate, z = 0, ...mark } = row;
      const planned = madeWithPlate(row, rows) ? shapedEnergy : unshapedEnergy;
      const energy = row.energy ?? (power === undefined ? planned : power / rate);
      if (energy === null) throw noEnergy();
      return { ...mark, z, energy };
    };
    const made = (plate: boolean) =>
      table.rows.filter((row) => madeWithPlate(row, rows) === plate).map(markOf);
    return { shaped: made(true), unshaped: made(false) };
  },
  shownAs: ({ shaped, unshaped }) => `${shaped.length} with the plate, ${unshaped.length} without`,
  formula: '\\text{ladder}_\\text{m},\\ E=E_\\text{ladder}\\text{ where none}',
  source: 'definition',
});

function noLadder(): Problem {
  return new Problem(
    'absent',
    'No table of a measured ladder has been given yet: choose one or paste it, as in "z (mm); dx (µm); dy (µm)".',
    { input: ladderTable.id },
  );
}

function noEnergy(): Problem {
  return new Problem(
    'absent',
    'The table of the ladder gives no energies, and no ladder can be planned that would have them. Write a column such as "energy (µJ)" beside the sizes.',
    { input: ladderTable.id },
  );
}

/** A ladder is short: rows in error are corrected where it was written. */
function checkRows({ bad: [first], name, rows, unmeasured }: NamedSpots): void {
  if (first) {
    const { row, column, problem } = first;
    throw new Problem('unreadable', `"${name}": ${problem} Then give the table again.`, {
      input: ladderTable.id,
      row,
      column,
    });
  }
  if (rows.length > 0) return;
  throw new Problem(
    'absent',
    `None of the ${unmeasured.length} rows of the table of the ladder has a size yet. Measure the marks and write their diameters, 0 where none is seen.`,
    { input: ladderTable.id },
  );
}
