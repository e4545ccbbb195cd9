import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import {
  type NamedCaustic,
  type NamedFocusCaustic,
  readCausticTable,
  readFocusCausticTable,
} from '../measured/causticTable.ts';
import { readDelimitedTable } from '../measured/delimitedTable.ts';
import { namingFile } from '../measured/namingFile.ts';
import { beginsAsProfile } from '../measured/profileTable.ts';
import { beginsAsSpots } from '../measured/spotTable.ts';
import { Problem } from '../problem.ts';

/**
 * Reads the table of a caustic from the text of a file: a header with the unit of each column, then a row for each
 * place. Throws Problem 'unreadable' that names the file and, where it can, row and column; says so where the table is a
 * profile of the spot.
 */
export function readCausticFile(text: string, name: string): NamedCaustic {
  checkCaustic(text, name);
  const introduction = `"${name}" is no table of a caustic`;
  return namingFile(name, introduction, () => ({ name, ...readCausticTable(text, toMetres) }));
}

/** Reads the table of a caustic near the focus, with one diameter or one along each of two axes, as {@link readCausticFile}. */
export function readFocusCausticFile(text: string, name: string): NamedFocusCaustic {
  checkCaustic(text, name);
  const introduction = `"${name}" is no table of a caustic`;
  return namingFile(name, introduction, () => ({ name, ...readFocusCausticTable(text, toMetres) }));
}

function checkCaustic(text: string, name: string): void {
  checkText(text, name, 'places and beam diameters');
  checkNoSpots(text, name);
  if (text.trim() !== '' && beginsAsProfile(readDelimitedTable(text, `"${name}"`))) {
    throw new Problem(
      'unreadable',
      `"${name}" is no table of a caustic but a profile of the spot, with places and values of light. Give it as the measured profile.`,
      { allowed: 'places and beam diameters' },
    );
  }
}

/** Refuses a table of spots, which may have places and diameters too. */
function checkNoSpots(text: string, name: string): void {
  if (beginsAsSpots(text)) throw spotsInstead(name, 'table of a caustic', 'places and beam diameters');
}

/** The Problem of a table of single spots that was given as something else, which would hold `allowed`. */
export function spotsInstead(name: string, given: string, allowed: string): Problem {
  return new Problem(
    'unreadable',
    `"${name}" is no ${given} but one of single spots, with energies and sizes of marks. Give it as the table of measured spots, in the document “Fluence and threshold”.`,
    { allowed },
  );
}

/** Refuses a picture or a spreadsheet's own file, read as text; `content` is what a table should hold. */
export function checkText(text: string, name: string, content: string): void {
  if (!text.includes('\0')) return;
  throw new Problem(
    'unreadable',
    `"${name}" is no text, where a table of ${content} is needed. Choose a table saved as CSV or text.`,
    { allowed: 'CSV or text' },
  );
}

/** Metres for a value in a unit of length as a header gives it; throws Problem 'unreadable' for any other unit. */
export function toMetres(value: number, unit: string): number {
  if (isKnownUnit(unit) && sameDimensions(dimensionsOf(unit), dimensionsOf('m'))) {
    return fromUnit(value, 'm', unit);
  }
  throw new Problem(
    'unreadable',
    `Row 1 gives the unit '${unit.slice(0, 40)}', which is no unit of length. Write it as in "z (mm)" and "d (µm)".`,
    { row: 1, value: unit, allowed: 'a unit of length' },
  );
}
