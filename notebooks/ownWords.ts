import { formulaConstants, formulaFunctions } from '../lib/studies/formulaFunctions.ts';
import { listed } from './shortTexts.ts';

/** Who uses an own quantity; empty where nobody does. */
export function usedBySaid(uses: readonly string[]): string {
  return uses.length === 0 ? '' : `Used by ${listed(uses)}.`;
}

/** What taking an own quantity out has done. */
export function takenOutSaid(name: string, uses: readonly string[]): string {
  const said = `‘${name}’ has been taken out.`;
  if (uses.length === 0) return `${said} Undo brings it back.`;
  const verb = uses.length === 1 ? 'lacks' : 'lack';
  return `${said} ${sentenceStart(listed(uses))} ${verb} it now; undo brings it back.`;
}

const sentenceStart = (text: string): string => text[0]!.toUpperCase() + text.slice(1);

/** How formulas are read, each rule with an example or two. */
export const formulaRules: readonly (readonly [rule: string, ...examples: string[]])[] = [
  ['A number of the design by its id, which the search below puts in.', 'spot.width / 2'],
  [
    'Numbers with a unit; a prefix belongs to its unit, so that 3 um^2 is 3 µm², not 3 × 10⁻⁶ m².',
    '3 um^2',
    '50 kHz',
    '0.4 J/cm^2',
  ],
  ['Decimal points only: a comma stands between what a function takes.', '0.25', '1.5e-3'],
  [
    'Only what has the same unit can be added or compared. A bare 0 has no unit; write 0 um where a length is meant.',
    'max(spot.width - 20 um, 0 um)',
  ],
  ['+ − * / ^ and brackets; powers before products before sums.', '2 * (lens.focalLength + 3 mm)'],
  [
    'Comparisons only as the first thing in if( ): if this holds, then that, else the other.',
    'if(spot.dip > 10 %, 1, 0)',
  ],
  [
    `Functions: ${[...formulaFunctions.keys()].join(', ')}. Angles of sin, cos and tan may be in any unit.`,
    'sqrt(laser.pulseEnergy / 1 uJ)',
  ],
  [`Constants: ${[...formulaConstants.keys()].join(', ')}.`, 'pi * spot.width^2 / 4'],
  ['Own quantities too, in any order; only round in a circle they cannot go.', '2 * own.depthRatio'],
];
