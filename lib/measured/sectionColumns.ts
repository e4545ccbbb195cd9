import { Problem } from '../problem.ts';
import { type Column, type HeaderCell, headerCells, type ToSI } from './tableHeader.ts';

const places = new Set([
  ...['x', 'y', 'position', 'place', 'distance', 'location', 'lateral', 'lateralposition', 'scanlength'],
  ...['length', 'path', 'horizontal', 'weg', 'abstand', 'strecke', 'xposition', 'yposition', 'xcoordinate'],
]);
const heights = new Set([
  ...[
    'height',
    'h',
    'elevation',
    'topography',
    'profileheight',
    'heightvalue',
    'surfaceheight',
    'höhe',
    'hoehe',
  ],
]);
const depths = new Set(['depth', 'depthbelowthesurface', 'tiefe', 'profiledepth']);
/** Names that do not say which way they count. */
const unsaid = new Set([
  ...[
    'z',
    'profile',
    'value',
    'level',
    'totalprofile',
    'rawprofile',
    'profil',
    'vertical',
    'zvalue',
    'zaxis',
  ],
]);

const example = 'x (µm); height (nm)';

/** Which way the heights of a table count, as far as its header says. */
export type NamedWay = 'height' | 'depth' | 'unsaid';

/** Where a section stands in its table. */
export interface SectionColumns {
  readonly position: Column;
  readonly height: Column;
  readonly named: NamedWay;
}

interface Cell extends HeaderCell {
  readonly index: number;
}

/**
 * The columns of place and height: by name, and what no name is found for in the first columns with a unit of length.
 * Throws Problem 'unreadable' naming the row of the header.
 */
export function findSectionColumns(header: readonly HeaderCell[], toSI: ToSI): SectionColumns {
  const cells = header.map((cell, index) => ({ ...cell, index }));
  const lengths = cells.filter(({ unit }) => isLength(unit, toSI));
  const named = findHeight(cells);
  const position =
    cells.find(({ name, index }) => places.has(name) && index !== named?.index) ??
    lengths.find(({ index }) => index !== named?.index);
  const height = named ?? lengths.find(({ index }) => index !== position?.index);
  if (!position || !height) throw missingColumns(header);
  return {
    position: columnOf(position),
    height: columnOf(height),
    named: depths.has(height.name) ? 'depth' : heights.has(height.name) ? 'height' : 'unsaid',
  };
}

/** True where a header names a place and a height or depth beside it. */
export function namesSection(header: readonly HeaderCell[]): boolean {
  const cells = header.map((cell, index) => ({ ...cell, index }));
  const height = findHeight(cells);
  return height !== undefined && cells.some(({ name, index }) => places.has(name) && index !== height.index);
}

/** The column of heights by name; the second of "x" and "y" alone is one too. */
function findHeight(cells: readonly Cell[]): Cell | undefined {
  const said = cells.find(({ name }) => heights.has(name) || depths.has(name));
  const found = said ?? cells.find(({ name }) => unsaid.has(name));
  const [first, second] = cells;
  return found ?? (cells.length === 2 && first!.name === 'x' && second!.name === 'y' ? second : undefined);
}

function isLength(unit: string, toSI: ToSI): boolean {
  if (unit === '') return false;
  try {
    return Number.isFinite(toSI(1, unit));
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

function columnOf({ index, cell, unit, line }: Cell): Column {
  if (unit !== '') return { index, name: cell, unit, factor: 1 };
  throw new Problem(
    'unreadable',
    `Row ${line}, column ${cell.slice(0, 40)} names no unit. Write it behind the name, as in "${example}".`,
    { row: line, column: cell, allowed: 'a name with a unit of length' },
  );
}

function missingColumns(header: readonly HeaderCell[]): Problem {
  const row = header[0]?.line ?? 1;
  return new Problem(
    'unreadable',
    `Row ${row} holds ${headerCells(header)}, not the names and units of two columns, a place across the groove and a height. Write such a line above the numbers, as in "${example}".`,
    { row, column: 'place and height', allowed: `as in ${example}` },
  );
}
