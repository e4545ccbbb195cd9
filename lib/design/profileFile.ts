import { sameDimensions } from '../graph/unitScale.ts';
import { dimensionsOf, fromUnit, isKnownUnit } from '../graph/units.ts';
import type { CameraImage } from '../measured/cameraImage.ts';
import { beginsAsCaustic } from '../measured/causticTable.ts';
import { readDelimitedTable } from '../measured/delimitedTable.ts';
import { namingFile } from '../measured/namingFile.ts';
import { namesPlace, readProfileTable } from '../measured/profileTable.ts';
import { beginsAsSpots } from '../measured/spotTable.ts';
import { readHeadedTable, readHeader } from '../measured/tableHeader.ts';
import { Problem } from '../problem.ts';
import { checkText, spotsInstead, toMetres } from './causticFile.ts';

/** A measured profile of the spot as read from a file: a table, or a picture whose pixels get their pitch later. */
export interface MeasuredProfile {
  readonly name: string;
  readonly axis: 'line' | 'radius' | 'picture';
  /** Places of a table in metres, ascending; empty for a picture. */
  readonly position: readonly number[];
  /** Fluences in J/m² where the table gives them with their unit, else empty. */
  readonly fluence: readonly number[];
  /** Values of a table in any other unit, else empty. */
  readonly counts: readonly number[];
  readonly image: CameraImage | null;
}

/**
 * Reads a profile from the text of a table: places across the spot or outward from its axis, and values of light. Throws
 * Problem 'unreadable' that names the file and, where it can, row and column; says so where the table is a caustic or one of single spots.
 */
export function readProfileFile(text: string, name: string): MeasuredProfile {
  checkText(text, name, 'places and values of light');
  // A table of spots may name z and a diameter as a caustic does, and x and y of its marks as a profile does.
  if (beginsAsSpots(text) && !isProfileOfTwo(text))
    throw spotsInstead(name, 'table of a profile', 'places and values of light');
  if (text.trim() !== '' && beginsAsCaustic(readDelimitedTable(text, `"${name}"`))) {
    throw new Problem(
      'unreadable',
      `"${name}" is no profile of the spot but the table of a caustic, with places and diameters. Give it as the measured caustic of the focus.`,
      { allowed: 'places and values of light' },
    );
  }
  return namingFile(name, `"${name}" is no profile of the spot`, () => {
    const { axis, position, value, absolute } = readProfileTable(text, toMetres, toFluence);
    const [fluence, counts] = absolute ? [value, []] : [[], value];
    return { name, axis, position, fluence, counts, image: null };
  });
}

/** A place, such as r, and one column that then is the light at it, though it may be called power. */
function isProfileOfTwo(text: string): boolean {
  const [first, ...others] = readHeader(readHeadedTable(text));
  return others.length === 1 && namesPlace(first!);
}

/** A picture of the spot as a measured profile. */
export function profileOfPicture(image: CameraImage): MeasuredProfile {
  return { name: image.name, axis: 'picture', position: [], fluence: [], counts: [], image };
}

function toFluence(value: number, unit: string): number | undefined {
  const known = unit !== '' && isKnownUnit(unit) && sameDimensions(dimensionsOf(unit), dimensionsOf('J/m^2'));
  return known ? fromUnit(value, 'J/m^2', unit) : undefined;
}
