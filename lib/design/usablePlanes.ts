import { choice, derived, number } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { numbersInPlane, sampleSearch, searchedEnds } from '../optics/family.ts';
import type { Light } from '../optics/light.ts';
import { findZeroCurvaturePlanes } from '../optics/onAxis.ts';
import { findUsablePlanes } from '../optics/usablePlanes.ts';
import { Problem } from '../problem.ts';
import { fieldWidth } from './depthInUse.ts';
import { depthTolerance } from './depthOfFocus.ts';
import { family, planeUnits, searchedRange } from './family.ts';
import { light, zonesInBeamRadii } from './focus.ts';
import { kindsText } from './shownParts.ts';

export const planeGoal = choice({
  id: 'focus.planeGoal',
  name: 'what the plane is for',
  symbol: '\\text{wish}',
  about:
    'By what the planes are found: every kind along z, or the kind that is asked for, each stretch with the plane that serves the wish best, best first.',
  initial: 'all',
  options: {
    all: 'every kind, along z',
    flat: 'flat-top: least dip',
    flatEdge: 'flat-top: sharpest edge',
    flatArea: 'flat-top: largest plateau',
    ring: 'ring: strongest contrast',
    ringWidth: 'ring: thinnest',
    smallest: 'smallest spot',
    deepest: 'greatest depth of focus',
  },
});

export const largestDip = number({
  id: 'focus.largestDip',
  name: 'largest dip of a flat-top',
  symbol: 'D_\\text{max}',
  unit: '1',
  display: '%',
  about:
    'Flat-tops with a deeper dip than this are not listed when flat-tops are asked for; 5\u202f% is where a flat-top ends by definition.',
  initial: 0.02,
  range: { min: 0, max: 0.05 },
});

export const leastContrast = number({
  id: 'focus.leastContrast',
  name: 'least contrast of a ring',
  symbol: 'D_\\text{min}',
  unit: '1',
  display: '%',
  about: 'Rings with a shallower dip than this are not listed when rings are asked for.',
  initial: 0.1,
  range: { min: 0.05, max: 1 },
});

const foundUnits = {
  ...planeUnits,
  depthFrom: 'm',
  depthTo: 'm',
  depth: 'm',
  deviation: '1',
  zeroCurvature: 'none',
} as const;

/** ζ of the planes without curvature on the axis in the range searched, cut to where the focal formulas hold. */
function zeroCurvatureWithin(light: Light, range: number): readonly number[] {
  const [low, high] = searchedEnds(light, range);
  return findZeroCurvaturePlanes(zonesInBeamRadii(light), range).filter(
    (zeta) => low <= zeta && zeta <= high,
  );
}

export const foundPlanes = derived({
  id: 'focus.foundPlanes',
  name: 'planes found',
  symbol: '\\text{planes}',
  unit: foundUnits,
  about:
    'One plane of each stretch of the family that serves the wish, with its depth of focus at the tolerance (0 where the plateau exceeds it in the plane itself). For every kind: of a flat-top the plane without a dip that has the largest plateau ratio, of a ring the darkest, of a peaked stretch the brightest, of a shallow ring the middle.',
  from: {
    light,
    range: searchedRange,
    family,
    goal: planeGoal,
    largestDip,
    leastContrast,
    tolerance: depthTolerance,
  },
  compute: ({ light, range, family, ...wish }) =>
    findUsablePlanes(light, sampleSearch(light, range), family, wish, zeroCurvatureWithin(light, range)),
  shownAs: (planes) => kindsText(planes),
  formula: '\\text{best}(\\text{family}, \\text{wish})',
  source: 'search',
  heavy: 'search',
});

export const usablePlanes = derived({
  id: 'focus.usablePlanes',
  name: 'usable planes',
  symbol: '\\text{usable}',
  unit: { ...foundUnits, allowedTilt: 'rad' },
  about:
    'The planes found for the wish within the range searched, each with the tilt that its depth of focus allows over the field: depth over field width, with the middle of the depth in the middle of the field and nothing else moving.',
  from: { planes: foundPlanes, field: fieldWidth, goal: planeGoal, range: searchedRange },
  compute: ({ planes, field, goal, range }) => {
    if (planes.length === 0) throw noPlane(planeGoal.options[goal], range);
    return planes.map((plane) => ({ ...plane, allowedTilt: Math.atan(plane.depth / field) }));
  },
  shownAs: (planes) => kindsText(planes),
  formula: '\\arctan(\\Delta z/F)',
  source: 'search',
});

function noPlane(wish: string, range: number): Problem {
  return new Problem(
    'absent',
    `Within ${formatReadable(range, '1', '1')} Rayleigh lengths of the focus no plane serves the wish “${wish}”; ask for another kind, or search further.`,
    { input: 'focus.planeGoal', value: wish },
  );
}

export const zeroCurvatureKinds = derived({
  id: 'focus.zeroCurvatureKinds',
  name: 'profiles in the zero-curvature planes',
  symbol: '\\text{kind}(z_i)',
  unit: planeUnits,
  about:
    'Kind and numbers of the profile in each plane without curvature on the axis, within the range searched, for coherent light (M² = 1): a ring with a broad floor has no curvature either.',
  from: { light, range: searchedRange },
  compute: ({ light, range }) => {
    const coherent = { ...light, beamPropagationRatio: 1 };
    const samples = sampleSearch(coherent, range);
    return zeroCurvatureWithin(coherent, range).map((zeta) => numbersInPlane(coherent, samples, zeta));
  },
  shownAs: (planes) => kindsText(planes),
  formula: '\\text{kind}(z_i),\\ \\mathrm{Re}(U_0^* U_2)=0',
  source: 'search',
  heavy: 'search',
});
