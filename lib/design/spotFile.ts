import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { namingFile } from '../measured/namingFile.ts';
import type { SpotUnit } from '../measured/spotColumns.ts';
import { type NamedSpots, readSpotTable } from '../measured/spotTable.ts';
import { checkText } from './causticFile.ts';

/**
 * Reads a table of single spots from the text of a file: a header with units, then a row a mark. Rows in error are kept
 * with their problems. Throws Problem 'unreadable' that names the file and, where it can, row and column.
 */
export function readSpotFile(text: string, name: string): NamedSpots {
  checkText(text, name, 'energies and sizes of marks');
  return namingFile(name, `"${name}" is no table of spots`, () => ({
    name,
    ...readSpotTable(text, readUnit),
  }));
}

/**
 * Reads a table of a focus ladder: readings of z and sizes of marks, and where they differ the energies and whether the
 * plate was in. Throws as {@link readSpotFile}.
 */
export function readLadderFile(text: string, name: string): NamedSpots {
  checkText(text, name, 'readings of z and sizes of marks');
  return namingFile(name, `"${name}" is no table of a focus ladder`, () => ({
    name,
    ...readSpotTable(text, readUnit, 'ladder'),
  }));
}

/** A value with its unit text in the SI unit `si`; undefined where it is of another kind or not known. */
export function readUnit(value: number, unit: string, si: SpotUnit): number | undefined {
  const known = isKnownUnit(unit) && sameDimensions(dimensionsOf(unit), dimensionsOf(si));
  return known ? fromUnit(value, si, unit) : undefined;
}
