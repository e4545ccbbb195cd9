import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { shownDepth } from './alongBeam.ts';
import { ladder, type PlannedRow } from './ladder.ts';

/** A reading of z, m, as it is set. */
export const shownReading = (reading: number) => formatReadable(reading, 'm', 'mm', 6);

/** What is set and expected in one of the two rows. */
function rowResults(key: 'shaped' | 'unshaped') {
  const words = key === 'shaped' ? 'with the plate' : 'without the plate';
  const before = key === 'shaped' ? 'ladder.shaped' : 'ladder.unshaped';
  const mark = key === 'shaped' ? '' : '\\text{u},';
  const common = { from: { ladder }, source: 'definition', formula: '\\text{ladder}' } as const;
  const ofRow = <T>(of: (row: PlannedRow) => T) => ({
    compute: ({ ladder }: { readonly ladder: { readonly [K in typeof key]: PlannedRow } }) => of(ladder[key]),
  });
  const energy = derived({
    ...common,
    id: `${before}.energy`,
    name: `pulse energy of the ladder ${words}`,
    symbol: `E_{${mark}\\text{ladder}}`,
    unit: 'J',
    display: 'uJ',
    digits: 3,
    about: `Energy of a pulse ${words}, where it is measured, at which the brightest plane has the excess wanted.`,
    ...ofRow((row) => row.energy),
  });
  const count = derived({
    ...common,
    id: `${before}.count`,
    name: `marks of the ladder ${words}`,
    symbol: `n_{${mark}\\text{ladder}}`,
    // Of readings rounded so that they can be set: does not scale with the unit.
    unit: 'none',
    about: `How many places a row ${words} has: all that may be marked wherever the focus lies within the doubt, and one more at each end.`,
    ...ofRow(({ proposal }) => proposal.readings.length),
  });
  const reading = (at: 0 | -1, name: 'first' | 'last') =>
    derived({
      ...common,
      id: `${before}.${name}Reading`,
      name: `${name} reading of the ladder ${words}`,
      symbol: `z_{${mark}\\text{${name}}}`,
      unit: 'none',
      about: `Reading of z, in metres, at the ${name} mark of a row ${words}.`,
      ...ofRow(({ proposal }) => proposal.readings.at(at)!),
      shownAs: shownReading,
    });
  const reach = derived({
    ...common,
    id: `${before}.reach`,
    name: `reach of the marks ${words}`,
    symbol: `z_{${mark}\\text{reach}}`,
    unit: 'm',
    display: 'um',
    digits: 3,
    about: `Largest distance from the focal plane at which a mark is predicted ${words}, to half a step.`,
    ...ofRow(({ proposal }) => proposal.reach),
    shownAs: (reach) => shownDepth(reach),
  });
  return { energy, count, first: reading(0, 'first'), last: reading(-1, 'last'), reach };
}

const shaped = rowResults('shaped');
const unshaped = rowResults('unshaped');
export const ladderEnergy = shaped.energy;
export const ladderCount = shaped.count;
export const ladderFirst = shaped.first;
export const ladderLast = shaped.last;
export const ladderReach = shaped.reach;
export const unshapedLadderEnergy = unshaped.energy;
export const unshapedLadderCount = unshaped.count;
export const unshapedLadderFirst = unshaped.first;
export const unshapedLadderLast = unshaped.last;
export const unshapedLadderReach = unshaped.reach;

export const ladderRise = derived({
  id: 'ladder.rise',
  name: 'rise of the peak without the plate',
  symbol: 'F_\\text{u,0}/F_0',
  unit: '1',
  digits: 2,
  about:
    'Peak fluence in the focal plane with the plate taken out over that with the plate in, at unchanged energy, the losses of the plate counted.',
  from: { ladder },
  compute: ({ ladder: { shaped, unshaped } }) =>
    (unshaped.inFocus * unshaped.fluencePerEnergy) / (shaped.inFocus * shaped.fluencePerEnergy),
  formula: '\\text{ladder}',
  source: 'definition',
});
