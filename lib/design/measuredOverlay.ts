import { choice, derived } from '../graph/define.ts';
import { highestSample } from '../measured/sampledProfile.ts';
import { furthestDefocus } from '../optics/roundSpot.ts';
import { Problem } from '../problem.ts';
import { deviationOf, overlay, predictFor, scaleOf } from './comparedProfile.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import {
  measuredPlane,
  measuredPlaneSource,
  measuredProfile,
  measuredProfileZ,
  measuredShape,
} from './measuredSpot.ts';
import { namingInput } from './namingInput.ts';

export const measuredScaling = choice({
  id: 'spot.measuredScaling',
  name: 'scale of the measured profile',
  symbol: '\\text{scale}',
  about:
    'How the measured profile gets its fluence: the energy within the radii measured made equal to that predicted there, its peak made equal to the predicted one, or the fluence that the table gives with its unit.',
  initial: 'energy',
  options: {
    energy: 'equal energy within the radii measured',
    peak: 'equal peak',
    measured: 'as measured, where the table gives J/cm²',
  },
});

/** Runs `compute`; where the plane was typed, a plane too far away is that one’s fault and not the workpiece’s. */
export function inPlane<T>(plane: 'workpiece' | 'typed', compute: () => T): T {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof Problem) || plane === 'workpiece' || error.parts.input !== workpieceZ.id)
      throw error;
    throw new Problem(
      error.kind,
      `The z typed for the measured profile is too far from the focus: profiles are computed up to ${furthestDefocus} Rayleigh lengths from it. Type a z nearer to 0, or compare in the plane of the workpiece.`,
      { input: measuredProfileZ.id, allowed: `up to ${furthestDefocus} Rayleigh lengths` },
    );
  }
}

export const measuredPrediction = derived({
  id: 'spot.measuredPrediction',
  name: 'prediction for the measured profile',
  symbol: 'I(\\rho_i)',
  unit: { irradiance: '1', energy: 'm^2', peak: '1', width: 'm', dip: '1' },
  about:
    'Relative irradiance predicted at the measured radii in the plane of the measurement, its sum over the area they reach to, and peak, width and dip of the predicted profile.',
  from: { light, z: measuredPlane, plane: measuredPlaneSource, shape: measuredShape },
  compute: ({ light, z, plane, shape }) => inPlane(plane, () => predictFor(light, z, shape)),
  formula: '(f/B)^2\\,|U(\\varrho,\\zeta)|^2 \\ast \\text{blur}(M^2)',
  source: 'collins1970',
});

export const predictedWidth = derived({
  id: 'spot.predictedWidth',
  name: 'predicted width in the plane measured',
  symbol: 'd_{0.5}(z_\\text{measured})',
  unit: 'm',
  display: 'um',
  about:
    'Diameter of a disc with the area above half the peak of the profile predicted where the measurement was made.',
  from: { prediction: measuredPrediction },
  compute: ({ prediction }) => prediction.width,
  formula: '2\\sqrt{A_{0.5}/\\pi}',
  source: 'definition',
});

export const predictedDip = derived({
  id: 'spot.predictedDip',
  name: 'predicted dip in the plane measured',
  symbol: 'D(z_\\text{measured})',
  unit: '1',
  display: '%',
  digits: 3,
  zeroBelow: 5e-4,
  about: 'Dip on the axis of the profile predicted where the measurement was made.',
  from: { prediction: measuredPrediction },
  compute: ({ prediction }) => prediction.dip,
  formula: '1-\\frac{I(0)}{I_\\text{max}}',
  source: 'definition',
});

export const measuredOverlay = derived({
  id: 'spot.measuredOverlay',
  name: 'measured against predicted profile',
  symbol: 'F_S(x)',
  unit: {
    x: 'm',
    measured: 'J/m^2',
    low: 'J/m^2',
    high: 'J/m^2',
    predicted: 'J/m^2',
    sections: { along: 'none', x: 'm', fluence: 'J/m^2' },
  },
  about:
    'Fluence per pulse from one side of the spot to the other: the measured mean around the axis, less and plus its spread, the prediction at the same radii, and the lines as measured.',
  from: {
    shape: measuredShape,
    prediction: measuredPrediction,
    scaling: measuredScaling,
    file: measuredProfile,
    F0: unshapedPeak,
  },
  compute: ({ shape, prediction, scaling, file, F0 }) => {
    const absolute = file !== null && file.fluence.length > 0;
    const scale = namingInput(measuredScaling.id, () => scaleOf(scaling, shape, prediction, F0, absolute));
    return {
      ...overlay(shape, prediction, F0, scale),
      sections: shape.sections.map(({ along, position, value }) => ({
        along,
        x: position,
        fluence: value.map((sample) => scale * sample),
      })),
    };
  },
  shownAs: ({ x }) => `${x.length} places across the spot`,
  formula: 'S(|x|)\\cdot\\text{scale}',
  source: 'definition',
});

export const measuredDeviation = derived({
  id: 'spot.measuredDeviation',
  // Finer than any camera.
  zeroBelow: 1e-5,
  name: 'deviation of the measured profile',
  symbol: '\\delta_S',
  unit: '1',
  display: '%',
  digits: 2,
  about:
    'Root-mean-square difference between measured and predicted fluence, relative to the predicted peak, over the area where either is above half its own peak.',
  from: { overlay: measuredOverlay, prediction: measuredPrediction, F0: unshapedPeak },
  compute: ({ overlay, prediction, F0 }) => deviationOf(overlay, F0 * prediction.peak),
  formula: '\\frac{1}{F_\\text{peak}}\\sqrt{\\overline{(F_S-F)^2}}',
  source: 'definition',
});

export const measuredPeakFluence = derived({
  id: 'spot.measuredPeakFluence',
  name: 'peak fluence of the measured profile',
  symbol: 'F_{S,\\text{max}}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about: 'Highest fluence per pulse of the measured mean around the axis, in the scale chosen for it.',
  from: { overlay: measuredOverlay },
  compute: ({ overlay }) => highestSample({ value: overlay.measured }),
  formula: '\\max_x F_S(x)',
  source: 'definition',
});

export const predictedPeakFluence = derived({
  id: 'spot.predictedPeakFluence',
  name: 'predicted peak fluence in the plane measured',
  symbol: 'F_\\text{peak}(z_\\text{measured})',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about: 'Highest fluence per pulse of the profile predicted where the measurement was made, incident.',
  from: { F0: unshapedPeak, prediction: measuredPrediction },
  compute: ({ F0, prediction }) => F0 * prediction.peak,
  formula: 'F_0\\,I_\\text{max}',
  source: 'definition',
});
