import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import { type NamedCaustic, readCausticTable } from '../measured/causticTable.ts';
import { namingFile } from '../measured/namingFile.ts';
import { Problem } from '../problem.ts';

/**
 * Reads the table of a caustic from the text of a file: a header with the unit of each column, then a row for each
 * place. Throws Problem 'unreadable' that names the file and, where it can, row and column.
 */
export function readCausticFile(text: string, name: string): NamedCaustic {
  // A picture or a spreadsheet's own file, read as text.
  if (text.includes('\0')) {
    throw new Problem(
      'unreadable',
      `"${name}" is no text, where a table of places and beam diameters is needed. Choose a table saved as CSV or text.`,
      { allowed: 'CSV or text' },
    );
  }
  const introduction = `"${name}" is no table of a caustic`;
  return namingFile(name, introduction, () => ({ name, ...readCausticTable(text, toMetres) }));
}

function toMetres(value: number, unit: string): number {
  if (isKnownUnit(unit) && sameDimensions(dimensionsOf(unit), dimensionsOf('m'))) {
    return fromUnit(value, 'm', unit);
  }
  throw new Problem(
    'unreadable',
    `Row 1 gives the unit '${unit.slice(0, 40)}', which is no unit of length. Write it as in "z (mm)" and "d (µm)".`,
    { row: 1, value: unit, allowed: 'a unit of length' },
  );
}
