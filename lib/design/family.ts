import { derived, number } from '../graph/define.ts';
import type { UnitOf } from '../graph/quantity.ts';
import { findFamily, sampleSearch } from '../optics/family.ts';
import type { PlaneNumbers } from '../optics/planeNumbers.ts';
import { light } from './focus.ts';
import { kindsText } from './shownParts.ts';

export const searchedRange = number({
  id: 'focus.searchedRange',
  name: 'range searched',
  symbol: '\\zeta_\\text{max}',
  unit: '1',
  about:
    'How far either side of the focus kinds of profile and usable planes are searched, in Rayleigh lengths of the unshaped beam (M² = 1).',
  initial: 7,
  range: { min: 0.1, max: 12 },
  typical: [1, 10],
});

/** Units of the numbers of a plane. */
export const planeUnits = {
  kind: 'none',
  dip: '1',
  areaRatio: '1',
  defocus: '1',
  z: 'm',
  relativePeak: '1',
  width: 'm',
  edgeWidth: 'm',
  ringDiameter: 'm',
  ringWidth: 'm',
  energyInHalf: '1',
} as const satisfies UnitOf<PlaneNumbers>;

export const family = derived({
  id: 'focus.family',
  name: 'kinds of profile through the focus',
  symbol: '\\text{family}',
  unit: {
    ...planeUnits,
    from: '1',
    to: '1',
    zFrom: 'm',
    zTo: 'm',
    largestDip: '1',
    largestDipAt: '1',
  },
  about:
    'Stretches along z over which the profile stays of one kind, within the range searched: ends, and the numbers of the middle plane. Flat-top: dip below 5\u202f% and plateau ratio above 0.30; shallow ring: dip 5–10\u202f%; ring: above 10\u202f%; peaked: the rest.',
  // From the light itself, not from samples: those are megabytes, this is small enough to cross to a worker and back.
  from: { light, range: searchedRange },
  compute: ({ light, range }) => findFamily(light, sampleSearch(light, range)),
  shownAs: (stretches) => kindsText(stretches),
  formula: '\\text{kind}(\\zeta),\\ |\\zeta|\\le\\zeta_\\text{max}',
  source: 'search',
  heavy: 'search',
});
