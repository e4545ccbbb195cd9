import {
  focusCausticExcess,
  focusCausticMeaning,
  focusCausticPoints,
  focusCausticPrediction,
  focusCausticScatter,
} from '../lib/design/measuredFocus.ts';
import {
  measuredDeviation,
  measuredPeakFluence,
  measuredScaling,
  predictedDip,
  predictedPeakFluence,
  predictedWidth,
} from '../lib/design/measuredOverlay.ts';
import {
  measuredDip,
  measuredPixelPitch,
  measuredPlane,
  measuredProfile,
  measuredReach,
  measuredShape,
  measuredWidth,
} from '../lib/design/measuredSpot.ts';
import { formatQuantity } from '../lib/graph/units.ts';
import { phrase, says } from './prose.ts';

/** Widths within this share of each other, and dips within as many percentage points, are called alike. */
export const alike = 0.05;

/** Measured and predicted numbers beside each other. */
export const spotNumbersSaid = says(
  {
    width: measuredWidth,
    dip: measuredDip,
    predictedWidth,
    predictedDip,
    z: measuredPlane,
    deviation: measuredDeviation,
  },
  () =>
    phrase`Measured, the spot is ${measuredWidth} wide with a dip of ${measuredDip} on the axis; predicted at z\u00a0=\u00a0${measuredPlane} are ${predictedWidth} and ${predictedDip}. Over the area above half the peak, measured and predicted fluence differ by ${measuredDeviation} of the predicted peak (root mean square).`,
);

/** What stands out between the measured spot and the predicted one, and where to look. */
export const spotAgreementSaid = says(
  { width: measuredWidth, predictedWidth, dip: measuredDip, predictedDip, file: measuredProfile },
  ({ width, predictedWidth, dip, predictedDip, file }) => {
    const wider = width / predictedWidth - 1;
    const deeper = dip - predictedDip;
    const scale = file!.image !== null ? 'the pixel pitch' : 'the unit of the places';
    if (Math.abs(wider) > alike) {
      const share = formatQuantity(Math.abs(wider), '1', '%', 2);
      return `The measured spot is ${share} ${wider > 0 ? 'wider' : 'narrower'} than predicted: look at the plane it was measured in, at ${scale}, and at the beam diameter at the plate.`;
    }
    if (Math.abs(deeper) > alike) {
      const points = formatQuantity(100 * Math.abs(deeper), '1', '1', 2);
      return `The widths agree to 5\u202f%, but the measured dip is ${points} percentage points ${deeper > 0 ? 'deeper' : 'shallower'} than predicted: the dip tells most of the plane, of the beam diameter against the step, and of M².`;
    }
    return 'The widths agree to 5\u202f% and the dips to 5 percentage points.';
  },
);

/** Where the fluence of the measured profile comes from. */
export const spotScaleSaid = says(
  // The peak is asked for, so that where the scale gives none its problem stands here, and what to choose.
  { scaling: measuredScaling, peak: measuredPeakFluence },
  ({ scaling }) => {
    switch (scaling) {
      case 'energy':
        return phrase`The measured profile is scaled to the energy predicted within the ${measuredReach} that it reaches to; its peak is then ${measuredPeakFluence} where ${predictedPeakFluence} is predicted.`;
      case 'peak':
        return phrase`The measured profile is scaled to the predicted peak of ${predictedPeakFluence}; this tells nothing of the energy.`;
      case 'measured':
        return phrase`The fluence is the table’s own: its peak is ${measuredPeakFluence} where ${predictedPeakFluence} is predicted.`;
    }
  },
  [measuredReach, predictedPeakFluence],
);

/** How the round profile was made of what the file holds. */
export const spotFoldedSaid = says(
  { file: measuredProfile, shape: measuredShape },
  ({ file }) => {
    // Where there is no file there is no shape, and these words stand back.
    switch (file!.axis) {
      case 'picture':
        return phrase`The picture is averaged around its centroid, background subtracted, with pixels of ${measuredPixelPitch} on the workpiece; the band is the standard deviation around each circle, noise included.`;
      case 'line':
        return 'The line is laid about its middle, halfway between its outermost places at half the peak, and the mean of both sides counts; the band reaches from one side to the other.';
      case 'radius':
        return 'The radii are drawn on both sides of the axis.';
    }
  },
  [measuredPixelPitch],
);

/** What tells against the measurement; nothing where nothing does. */
export const spotWarning = says({ shape: measuredShape }, ({ shape }) => shape.notes.join(' '));

const meanings = {
  moment: 'second-moment radii, the predicted ones in a window of three times their width',
  gaussian: 'the outermost radii at 1/e² of the peak',
  half: 'the outermost radii at half the peak',
} as const;

/** The measured caustic against the predicted radii. */
export const focusCausticSaid = says(
  { excess: focusCausticExcess, deviation: focusCausticScatter, meaning: focusCausticMeaning },
  ({ excess, meaning }) => {
    const compared = `Compared are ${meanings[meaning]}; nothing is converted, since one kind follows from another for a Gaussian only.`;
    if (Math.abs(excess) <= 0.02)
      return phrase`On average the measured radii agree with the predicted ones to ${formatQuantity(Math.max(1e-3, Math.abs(excess)), '1', '%', 1)}; one by one they differ by ${focusCausticScatter} (root mean square). ${compared}`;
    const share = formatQuantity(Math.abs(excess), '1', '%', 2);
    const side = excess > 0 ? 'larger' : 'smaller';
    return phrase`On average the measured radii are ${share} ${side} than predicted; one by one they differ by ${focusCausticScatter} (root mean square). ${compared}`;
  },
);

/** How many of the points were compared. */
export const focusCausticPlacesSaid = says(
  { points: focusCausticPoints, prediction: focusCausticPrediction },
  ({ points, prediction }) => {
    const [all, compared] = [points.z.length, prediction.z.length];
    if (compared === all) return `All ${all} places are compared.`;
    return `Of ${all} places ${compared} are compared: those within twelve Rayleigh lengths of the focus, and no more than 25 of them.`;
  },
);
