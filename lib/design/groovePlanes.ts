import { derived } from '../graph/define.ts';
import type { NumberInput } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import type { Light } from '../optics/light.ts';
import { judgeProfile } from '../optics/planeNumbers.ts';
import type { ProfileKind } from '../optics/profileMetrics.ts';
import { roundProfileAt } from '../optics/roundSpot.ts';
import { spotAt } from '../optics/spot.ts';
import type { PulseTrain } from '../process/chordRemoval.ts';
import { countingLevel } from '../process/cuttingLaw.ts';
import { sampleCuttingLight } from '../process/cuttingLight.ts';
import { cutGroove } from '../process/groove.ts';
import { shapeOf } from '../process/grooveShape.ts';
import { light, unshapedPeak } from './focus.ts';
import { firstPlane, secondPlane } from './grooveInputs.ts';
import { pulseTrain } from './grooveLaw.ts';
import { focusOf, plainOf } from './grooveLight.ts';

function inPlane(place: 'first' | 'second', z: NumberInput, mark: string) {
  const kind = derived({
    id: `groove.${place}.kind`,
    name: `kind of profile in the ${place} plane`,
    symbol: `\\text{kind}_${mark}`,
    unit: 'none',
    about: `Kind of the profile on a fresh surface in the ${place} plane, by dip and plateau ratio.`,
    from: { light, z },
    compute: ({ light, z }): ProfileKind => judgeProfile(roundProfileAt(light, z)).kind,
    formula: '\\text{kind}(D, A_{0.9}/A_{0.5})',
    source: 'definition',
  });
  const peakFluence = derived({
    id: `groove.${place}.peakFluence`,
    name: `peak fluence in the ${place} plane`,
    symbol: `F_{\\text{peak},${mark}}`,
    unit: 'J/m^2',
    display: 'J/cm^2',
    digits: 3,
    about: `Highest fluence per pulse on a fresh surface in the ${place} plane, at today’s pulse energy.`,
    from: { light, z, unit: unshapedPeak },
    compute: ({ light, z, unit }) => unit * spotAt(light, z).peak,
    formula: `F_0I_\\text{max}(z_${mark})`,
    source: 'definition',
  });
  return { kind, peakFluence };
}

export const { kind: firstKind, peakFluence: firstPeakFluence } = inPlane('first', firstPlane, '1');
export const { kind: secondKind, peakFluence: secondPeakFluence } = inPlane('second', secondPlane, '2');

/** Peaks of the chart over the threshold of one pulse: from just above it to thirty times. */
const lowestRatio = 1.15;
const highestRatio = 30;
const places = 21;
/** A quarter of a percent of the ratio of depths is enough for a chart. */
const steps = { across: 48, along: 48 };

/** Part of the depth of a pulse at which no pass is deep. */
const tiny = 1e-6;

/** Centre against mean depth after one pass at a peak of so many thresholds. */
function ratioAt(spot: Spot, train: Omit<PulseTrain, 'unit'>, ratio: number): number {
  const unit = (ratio * train.law.incubation.first) / spot.peak;
  const cutting = sampleCuttingLight({
    // No pass is deep here, so that every plane is that of the surface.
    spotAtDepth: () => spot,
    planeStep: Number.MAX_VALUE,
    level: countingLevel(train.law) / unit,
    depth: 0,
    direction: 0,
    mirrored: true,
    steps,
  });
  return shapeOf(cutGroove(cutting, { ...train, unit, passes: 1 }))!.centreToMeanDepth;
}

export const ratioByPeak = derived({
  id: 'groove.ratioByPeak',
  name: 'centre against mean depth by peak fluence',
  symbol: 'd_0/\\bar d\\,(F_\\text{peak})',
  unit: { ratio: '1', first: '1', second: '1', plain: '1' },
  about:
    'Depth in the middle over mean depth after one pass, while the walls are shallow, against peak fluence over the threshold of one pulse: in the first plane, in the second, and of the plain beam in its focus. With the threshold of one pulse throughout, so that neither the size of the focus nor the pulse spacing matters.',
  from: { light, first: firstPlane, second: secondPlane, train: pulseTrain },
  compute: ({ light, first, second, train }, report) => {
    const ratio = Float64Array.from(
      { length: places },
      (_, i) => lowestRatio * (highestRatio / lowestRatio) ** (i / (places - 1)),
    );
    const plain = plainOf(light);
    // Of one pass only the middle against the mean is asked: a tiny depth keeps it a shallow one.
    const shallow = {
      ...train,
      law: {
        ...train.law,
        depth: tiny * train.law.depth,
        incubation: { ...train.law.incubation, exponent: 1 },
        ...(train.law.second
          ? { second: { ...train.law.second, depth: tiny * train.law.second.depth } }
          : {}),
      },
    };
    const along = (light: Light, z: number, done: number) => {
      const spot = spotAt(light, z);
      return ratio.map((one, i) => {
        report?.((done + i / places) / 3);
        return ratioAt(spot, shallow, one);
      });
    };
    return {
      ratio,
      first: along(light, first, 0),
      second: along(light, second, 1),
      plain: along(plain, focusOf(plain), 2),
    };
  },
  shownAs: ({ ratio }) =>
    `${ratio.length} peaks up to ${formatReadable(highestRatio, '1', '1', 2)} thresholds`,
  formula: 'd_0/\\bar d',
  source: 'nolte1997',
  heavy: 'search',
});
