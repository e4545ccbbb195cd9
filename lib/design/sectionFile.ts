import { file, number } from '../graph/define.ts';
import { beginsAsCaustic } from '../measured/causticTable.ts';
import { readDelimitedTable } from '../measured/delimitedTable.ts';
import { namingFile } from '../measured/namingFile.ts';
import { beginsAsProfile } from '../measured/profileTable.ts';
import { beginsAsSection, type NamedSection, readSectionTable } from '../measured/sectionTable.ts';
import { beginsAsSpots } from '../measured/spotTable.ts';
import { Problem } from '../problem.ts';
import { checkText, spotsInstead, toMetres } from './causticFile.ts';

export const sectionFile = file<NamedSection>({
  id: 'groove.sectionFile',
  name: 'measured cross-section',
  symbol: '\\text{section}_\\text{m}',
  unit: { name: 'none', position: 'm', height: 'm', named: 'none', missing: '1' },
  about:
    'A cross-section of a groove from a profilometer or microscope: a table of places across it and heights, as in "x (µm); height (nm)". Heights may count upwards or downwards from any zero, the sample may be tilted, and points may be missing; unworked surface is needed on both sides.',
  shownAs: ({ name, position }) => `${name}, ${position.length} places`,
});

export const sectionPasses = number({
  id: 'groove.sectionPasses',
  name: 'passes of the measured groove',
  symbol: 'n_\\text{m}',
  unit: '1',
  about:
    'How often the spot ran along the groove whose cross-section was measured; a whole number, else rounded.',
  initial: 10,
  range: { min: 1, max: 10e3 },
  typical: [1, 200],
});

const content = 'places across a groove and heights';

/**
 * Reads a cross-section from the text of a file. Throws Problem 'unreadable' that names the file and, where it can, row
 * and column; says so where the table is a caustic, a profile of the spot or one of single spots.
 */
export function readSectionFile(text: string, name: string): NamedSection {
  checkText(text, name, content);
  if (text.trim() !== '' && !isSection(text)) checkOthers(text, name);
  return namingFile(name, `"${name}" is no cross-section`, () => ({
    name,
    ...readSectionTable(text, toMetres),
  }));
}

/** True where the text begins as a cross-section. */
export function isSection(text: string): boolean {
  return beginsAsSection(text, toMetres);
}

function checkOthers(text: string, name: string): void {
  if (beginsAsSpots(text)) throw spotsInstead(name, 'cross-section', content);
  const table = readDelimitedTable(text, `"${name}"`);
  const found = beginsAsCaustic(table)
    ? 'the table of a caustic, with places and diameters. Give it as the measured caustic'
    : beginsAsProfile(table)
      ? 'a profile of the spot, with places and values of light. Give it as the measured profile'
      : undefined;
  if (found === undefined) return;
  throw new Problem('unreadable', `"${name}" is no cross-section but ${found}.`, { allowed: content });
}
