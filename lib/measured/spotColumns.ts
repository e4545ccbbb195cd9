import { Problem } from '../problem.ts';
import { findPlateColumn } from './plateColumn.ts';
import {
  areas,
  axes,
  diameters,
  energies,
  inners,
  ofAxis,
  planes,
  powers,
  pulseCounts,
  radii,
  uncertainties,
} from './spotNames.ts';
import { type Column, type HeaderCell, headerCells } from './tableHeader.ts';

/** The SI units that the columns of a table of spots come in. */
export type SpotUnit = 'J' | 'W' | 'm' | 'm^2' | '1';

/** A value with its unit text in the SI unit `si`; undefined for a unit of another kind. */
export type ReadUnit = (value: number, unit: string, si: SpotUnit) => number | undefined;

/** A column with the SI unit that its values come in. */
export interface SpotColumn extends Column {
  readonly si: SpotUnit;
}

/** A ladder needs z, may leave the energy out, and may say which marks were made with the plate. */
export type SpotTableKind = 'spots' | 'ladder';

/** What each column of a table of spots holds. */
export interface SpotColumns {
  /** Pulse energy (J) or average power (W); a ladder may leave it to the plan. */
  readonly energy: SpotColumn | undefined;
  /** Two diameters along x and y, one diameter, or an area: a column of squared diameters has the factor π/4. */
  readonly sizes: readonly SpotColumn[];
  /** Diameter of an unmarked centre. */
  readonly inner: SpotColumn | undefined;
  /** Standard uncertainty of what stands in the columns of size. */
  readonly uncertainty: SpotColumn | undefined;
  readonly pulses: SpotColumn | undefined;
  readonly z: SpotColumn | undefined;
  /** Of a ladder: where it says whether the plate was in. */
  readonly plate: Pick<SpotColumn, 'index' | 'name'> | undefined;
  /** The table has the places of a coupon: rows without a result are still to be measured. */
  readonly planned: boolean;
  /** Headings that nothing is read from. */
  readonly ignored: readonly string[];
}

/** Headings of a coupon’s places, as its plan writes them. */
export const couponPlaces = ['x on coupon', 'y on coupon'] as const;
const settings = /attenuat|setting|angle|waveplate|hwp|transmission|current|position|einstellung|winkel/;

const example = 'energy (µJ); dx (µm); dy (µm)';

/** A header where "d_x" is a name without a unit, not one in the unit x. */
export function asSpots(cell: HeaderCell): HeaderCell {
  const axis = /^(x|y|1|2|inner)$/i.test(cell.unit) && cell.cell.includes('_');
  return axis ? { ...cell, name: `${cell.name}${cell.unit.toLowerCase()}`, unit: '' } : cell;
}

/**
 * Finds the columns of a table of spots by their headings. Throws Problem 'unreadable' naming row and column where one is
 * missing, has no unit or one of another kind, or stands there twice.
 */
export function findSpotColumns(
  given: readonly HeaderCell[],
  read: ReadUnit,
  kind: SpotTableKind = 'spots',
): SpotColumns {
  const header = given.map(asSpots);
  const column = (
    what: string,
    names: readonly string[],
    units: readonly SpotUnit[],
    halves: readonly string[] = [],
  ) => findColumn(header, { what, names, halves, units }, read);
  const energy = column('the energy', energies, ['J']) ?? column('the power', powers, ['W']);
  if (!energy && kind === 'spots') throw noEnergy(header);
  const sizes = findSizes(header, column);
  const rest = {
    inner: column('the inner diameter', inners, ['m']),
    uncertainty: column('the uncertainty', uncertainties, [sizes[0]!.si]),
    pulses: column('the pulses', pulseCounts, ['1']),
    z: column('z', planes, ['m']),
  };
  if (!rest.z && kind === 'ladder') throw noColumn(header, 'z', planes, 'z (mm); dx (µm); dy (µm)');
  const at = kind === 'ladder' ? findPlateColumn(header) : undefined;
  const plate = at === undefined ? undefined : { index: at, name: header[at]!.cell };
  const used = new Set([energy, plate, ...sizes, ...Object.values(rest)].map((found) => found?.index));
  const planned = couponPlaces.every((place) =>
    header.some(({ name }) => name === place.replaceAll(' ', '')),
  );
  const ignored = header.filter(({ cell }, i) => !used.has(i) && cell !== '').map(({ cell }) => cell);
  return { energy, sizes, ...rest, plate, planned, ignored };
}

type Find = (
  what: string,
  names: readonly string[],
  units: readonly SpotUnit[],
  halves?: readonly string[],
) => SpotColumn | undefined;

function findSizes(header: readonly HeaderCell[], column: Find): SpotColumn[] {
  for (const pair of axes) {
    const found = pair.map((axis) =>
      column(`the diameter along ${axis}`, ofAxis(diameters, axis), ['m'], ofAxis(radii, axis)),
    );
    const [x, y] = found;
    if (x && y) return [x, y];
    const missing = x ? pair[1] : y ? pair[0] : undefined;
    if (missing) throw noColumn(header, `the diameter along ${missing}`, ofAxis(diameters, missing), example);
  }
  const one = column('the area', areas, ['m^2']) ?? column('the diameter', diameters, ['m', 'm^2'], radii);
  if (one) return [one];
  throw noColumn(header, 'the size of the marks', ['dx and dy', 'diameter', 'area'], example);
}

interface WantedSpots {
  readonly what: string;
  readonly names: readonly string[];
  readonly halves: readonly string[];
  readonly units: readonly SpotUnit[];
}

const kinds: Readonly<Record<SpotUnit, string>> = {
  J: 'an energy (µJ)',
  W: 'a power (mW)',
  m: 'a length (µm)',
  'm^2': 'an area (µm²)',
  '1': 'a count, which needs none',
};

/** The only column of those names; undefined where there is none. */
function findColumn(
  header: readonly HeaderCell[],
  { what, names, halves, units }: WantedSpots,
  read: ReadUnit,
): SpotColumn | undefined {
  const places = header.flatMap(({ name }, i) => (names.includes(name) || halves.includes(name) ? [i] : []));
  const found = header[places[0] ?? -1];
  if (!found) return undefined;
  const { cell, unit, line } = found;
  if (places.length > 1) {
    const second = header[places[1]!]!.cell;
    const message = `Row ${line} names two columns for ${what}: "${cell}" and "${second}". Keep one of them.`;
    throw new Problem('unreadable', message, { row: line, column: second });
  }
  const parts = { row: line, column: cell, value: unit, allowed: units.map((si) => kinds[si]).join(' or ') };
  const si = units.find((one) => (unit === '' ? one === '1' : read(1, unit, one) !== undefined));
  if (si)
    return {
      index: places[0]!,
      name: cell,
      unit,
      factor: factorOf(found.name, halves.includes(found.name), si),
      si,
    };
  const says = unit === '' ? 'names no unit' : `gives the unit '${unit.slice(0, 40)}'`;
  throw new Problem(
    'unreadable',
    `Row ${line}, column ${cell} ${says}; ${what} needs that of ${parts.allowed}. Write it behind the name, as in "${example}".`,
    parts,
  );
}

/** Radii are doubled; the square of a diameter or radius is made an area. */
function factorOf(name: string, half: boolean, si: SpotUnit): number {
  if (si === 'm^2' && diameters.includes(name)) return Math.PI / 4;
  return half ? (si === 'm^2' ? Math.PI : 2) : 1;
}

function noColumn(
  header: readonly HeaderCell[],
  what: string,
  names: readonly string[],
  as: string,
): Problem {
  const row = header[0]!.line;
  const allowed = names.slice(0, 6).join(', ');
  return new Problem(
    'unreadable',
    `Row ${row} holds ${headerCells(header)}, no column for ${what}. Name one of them ${allowed} with its unit, as in "${as}".`,
    { row, column: what, allowed },
  );
}

/** A setting of the attenuator alone says no energy. */
function noEnergy(header: readonly HeaderCell[]): Problem {
  const setting = header.find(({ name }) => settings.test(name));
  if (!setting) return noColumn(header, 'the energy', ['energy', 'pulse energy', 'average power'], example);
  return new Problem(
    'unreadable',
    `Row ${setting.line} has the setting "${setting.cell}" and no column for the energy; what a setting lets through is not known here. Add a column of the pulse energy, as in "${example}".`,
    { row: setting.line, column: setting.cell, allowed: 'a column of energy or average power' },
  );
}
