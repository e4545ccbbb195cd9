import { unshapedPeak } from './focus.ts';
import { askedOf, type BeamParts, markQuantities } from './markQuantities.ts';
import { peak, profile } from './spot.ts';
import { fluenceWithoutPlate, unshapedProfile, unshapedSpotPeak } from './unshaped.ts';

/** The beam behind the plate. */
export const shapedParts: BeamParts = {
  before: '',
  profile,
  peak,
  unit: unshapedPeak,
  words: '',
  mark: '',
};

/** The beam with the plate taken out, and the losses of the plate with it; the stop stays. */
export const unshapedParts: BeamParts = {
  before: 'unshaped.',
  profile: unshapedProfile,
  peak: unshapedSpotPeak,
  unit: fluenceWithoutPlate,
  words: ' without the step',
  mark: '\\text{u},',
};

export const { asked, level: thresholdLevel } = askedOf(shapedParts);
export const { effectiveArea, marked, meanFluence, markArea, markDiameter, markInnerDiameter } =
  markQuantities(shapedParts, asked, thresholdLevel);

export const { asked: unshapedAsked, level: unshapedThresholdLevel } = askedOf(unshapedParts);
export const {
  effectiveArea: unshapedEffectiveArea,
  marked: unshapedMarked,
  meanFluence: unshapedMeanFluence,
  markArea: unshapedMarkArea,
  markDiameter: unshapedMarkDiameter,
  markInnerDiameter: unshapedMarkInnerDiameter,
} = markQuantities(unshapedParts, unshapedAsked, unshapedThresholdLevel);
