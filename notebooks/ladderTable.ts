import type { PlannedLadder } from '../lib/design/ladder.ts';
import { formatQuantity, toUnit } from '../lib/graph/units.ts';
import { couponPlaces } from '../lib/measured/spotColumns.ts';
import type { LadderMark } from '../lib/process/ladderPlan.ts';
import type { DataColumn } from './document.ts';

/** How the units of the columns are written. */
const written: Readonly<Record<string, string>> = { um: 'µm', 'um^2': 'µm²', uJ: 'µJ', '1': '' };

/** Numbers of the ladder by column; NaN where they are filled in at the microscope. Read back as a table of a ladder. */
export function ladderColumns({ marks, rate }: PlannedLadder): DataColumn[] {
  const column = (name: string, si: string, unit: string, of: (mark: LadderMark) => number): DataColumn => ({
    name,
    unit: written[unit] ?? unit,
    // Six digits: more than can be set or measured, and none of the dust of binary fractions.
    values: Float64Array.from(marks, (mark) => Number(toUnit(of(mark), si, unit).toPrecision(6))),
  });
  const empty = (name: string, si: string, unit: string) => column(name, si, unit, () => Number.NaN);
  const [x, y] = couponPlaces;
  return [
    column('mark', '1', '1', ({ number }) => number),
    column(x, 'm', 'mm', (mark) => mark.x),
    column(y, 'm', 'mm', (mark) => mark.y),
    column('plate', '1', '1', ({ plate }) => (plate ? 1 : 0)),
    column('energy', 'J', 'uJ', ({ energy }) => energy),
    column('average power', 'W', 'mW', ({ energy }) => energy * rate),
    // The reading of a stage to a nanometre.
    {
      ...column('z', 'm', 'mm', () => 0),
      values: Float64Array.from(marks, ({ reading }) => nanometres(reading)),
    },
    column('predicted diameter', 'm', 'um', ({ mark }) => mark.outerDiameter),
    column('predicted inner diameter', 'm', 'um', ({ mark }) => mark.innerDiameter),
    column('predicted area', 'm^2', 'um^2', ({ mark }) => mark.area),
    empty('dx', 'm', 'um'),
    empty('dy', 'm', 'um'),
    empty('inner diameter', 'm', 'um'),
    empty('remark', '1', '1'),
  ];
}

/** A length in millimetres, rounded to nanometres. */
function nanometres(length: number): number {
  return Math.round(length * 1e9) / 1e6;
}

/**
 * A ladder as CSV with empty columns for what is measured, to be given back filled as the table of the ladder. Lines of
 * comment say how, and for which design, where it has a name; a byte order mark tells spreadsheets that µ is one sign. No
 * comma in the comments: spreadsheets would part them into cells.
 */
export function ladderCsv(ladder: PlannedLadder, design = ''): string {
  const columns = ladderColumns(ladder);
  const threshold = formatQuantity(ladder.threshold, 'J/m^2', 'J/cm^2', 3);
  const cell = (value: number) => (Number.isNaN(value) ? '' : String(value));
  const lines = [
    ...(design === '' ? [] : [`# Focus ladder of the design: ${design.replaceAll(/[,;\t\r\n]+/g, ' ')}.`]),
    `# Single pulses. Marks predicted with a threshold of ${threshold} and the focus where it is expected.`,
    '# plate: 1 with the plate and 0 without it. Set the energy of the row before the plate is taken out.',
    '# Fill in dx and dy: 0 where no mark is seen and nothing where none was measured. Then give this table as the measured ladder.',
    columns.map(({ name, unit }) => (unit === '' ? name : `${name} (${unit})`)).join(','),
    ...ladder.marks.map((_, row) => columns.map(({ values }) => cell(values[row]!)).join(',')),
  ];
  return `\uFEFF${lines.join('\r\n')}\r\n`;
}
