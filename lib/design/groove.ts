import { derived } from '../graph/define.ts';
import type { Derived, Heaviness, NumberInput } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import { spotAt } from '../optics/spot.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { type CutGroove, grooveAt, grooveUnits } from './grooveCut.ts';
import { firstPlane, groovePasses, secondPlane } from './grooveInputs.ts';
import { pulseTrain } from './grooveLaw.ts';
import { focusOf, plainOf } from './grooveLight.ts';
import { partsOf } from './grooveParts.ts';
import { asked } from './marks.ts';
import { unshapedRuns } from './rippleWindow.ts';
import { fluenceWithoutPlate } from './unshaped.ts';

const formula = '\\sum_\\text{passes}\\frac1p\\int d(F\\cos\\alpha, N)\\,dx';
const model =
  'Each pass removes what the pulses leave that run over a place: with the fluence of the plane at the depth reached, times the cosine of the wall’s slope, and the threshold of as many pulses as have counted there.';
const inWords = ({ shape }: CutGroove) =>
  `${formatReadable(shape.depth, 'm', 'um', 3)} deep, ${formatReadable(shape.topWidth, 'm', 'um', 3)} wide`;

function shapedCut(
  id: string,
  words: string,
  mark: string,
  z: NumberInput,
  about: string,
  heavy: Heaviness,
): Derived<CutGroove> {
  return derived({
    id,
    name: `groove${words}`,
    symbol: `d${mark}(y)`,
    unit: grooveUnits,
    about: `${about} ${model}`,
    from: { light, z, unit: unshapedPeak, train: pulseTrain, passes: groovePasses },
    compute: ({ light, z, unit, train, passes }, report) =>
      grooveAt(light, z, { ...train, unit }, passes, report),
    shownAs: inWords,
    formula,
    source: 'nolte1997',
    heavy,
  });
}

export const grooveCut = shapedCut(
  'groove.cut',
  '',
  '',
  workpieceZ,
  'Cross-section of the line after its passes, cut with the plate where the workpiece lies.',
  'picture',
);
export const firstGrooveCut = shapedCut(
  'groove.first.cut',
  ' in the first plane',
  '_1',
  firstPlane,
  'Cross-section of the line after as many passes with the fresh surface in the first plane, at the same pulse energy.',
  // Not with the groove of today, which follows the hand.
  'search',
);
export const secondGrooveCut = shapedCut(
  'groove.second.cut',
  ' in the second plane',
  '_2',
  secondPlane,
  'Cross-section of the line after as many passes with the fresh surface in the second plane, at the same pulse energy.',
  'search',
);

export const plainUnit = derived({
  id: 'unshaped.groove.focusFluence',
  name: 'peak fluence of the unshaped focus that cuts the groove without the plate',
  symbol: 'F_{\\text{u,g}}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Fluence per pulse on the axis of the unshaped, unclipped beam in its focus for M² = 1, incident, at the energy at which the groove without the plate is cut: that of the same peak as with the plate where the workpiece lies, or the same energy.',
  from: { light, shaped: asked, unit: unshapedPeak, plain: fluenceWithoutPlate, runs: unshapedRuns },
  compute: ({ light, shaped, unit, plain, runs }) => {
    if (runs === 'energy') return plain;
    return (unit * shaped.peak) / spotAt(plainOf(light), focusOf(light)).peak;
  },
  enteredFor: ({ runs }) => ({
    keys: runs === 'peak' ? ['runs', 'light', 'shaped', 'unit'] : ['runs', 'plain'],
  }),
  formula: 'F_0I_\\text{max}/I_\\text{max,u}\\ \\text{or}\\ F_\\text{u,0}',
  source: 'scaling',
});

export const plainPeakFluence = derived({
  id: 'unshaped.groove.peakFluence',
  name: 'peak fluence of the groove without the plate',
  symbol: 'F_\\text{peak,u,g}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  digits: 3,
  about:
    'Highest fluence per pulse on the fresh surface with the plate taken out and the surface in the focus, at the energy that the groove without the plate is cut with.',
  from: { light, unit: plainUnit },
  compute: ({ light, unit }) => unit * spotAt(plainOf(light), focusOf(light)).peak,
  formula: 'F_{\\text{u,g}}I_\\text{max,u}',
  source: 'definition',
});

export const plainGrooveCut: Derived<CutGroove> = derived({
  id: 'unshaped.groove.cut',
  name: 'groove without the plate',
  symbol: 'd_\\text{u}(y)',
  unit: grooveUnits,
  about: `Cross-section of the line after as many passes with the plate taken out and the fresh surface in the focus, at the same peak fluence as with the plate or at the same energy. ${model}`,
  from: { light, unit: plainUnit, train: pulseTrain, passes: groovePasses },
  compute: ({ light, unit, train, passes }, report) =>
    grooveAt(plainOf(light), focusOf(light), { ...train, unit }, passes, report),
  shownAs: inWords,
  formula,
  source: 'nolte1997',
  heavy: 'search',
});

export const groove = partsOf({ before: 'groove.', words: '', mark: '', cut: grooveCut });
export const firstGroove = partsOf({
  before: 'groove.first.',
  words: ' in the first plane',
  mark: '^{(1)}',
  cut: firstGrooveCut,
});
export const secondGroove = partsOf({
  before: 'groove.second.',
  words: ' in the second plane',
  mark: '^{(2)}',
  cut: secondGrooveCut,
});
export const plainGroove = partsOf({
  before: 'unshaped.groove.',
  words: ' without the plate',
  mark: '^{(\\text{u})}',
  cut: plainGrooveCut,
});
