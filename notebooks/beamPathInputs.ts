import { fullEnergy, setting } from '../lib/design/couponInputs.ts';
import { fieldCurvature, fieldWidth, heightError, thermalShift, tilt } from '../lib/design/depthInUse.ts';
import { branches, secondDepth, secondThreshold } from '../lib/design/depthLaw.ts';
import {
  expanderKind,
  plateDistance as expanderPlateDistance,
  firstFocalLength,
  magnification,
  secondFocalLength,
  separation,
} from '../lib/design/expander.ts';
import { workpieceZ } from '../lib/design/focus.ts';
import {
  absorptanceSource,
  thermalSource,
  typedAbsorptance,
  typedConductivity,
  typedDensity,
  typedSpecificHeat,
} from '../lib/design/heatInputs.ts';
import {
  beamDiameter,
  beamImage,
  beamImagePitch,
  beamImagePitchUncertainty,
  beamPropagationRatio,
  pulseDuration,
  pulseEnergy,
  repetitionRate,
  wavelength,
} from '../lib/design/laser.ts';
import { distanceMode, focalLength, typedPlateDistance } from '../lib/design/lens.ts';
import { energySource, opticsTransmission, plateTransmission, typedPower } from '../lib/design/losses.ts';
import { markPictureInputs } from '../lib/design/markPicture.ts';
import { goal } from '../lib/design/match.ts';
import { material } from '../lib/design/material.ts';
import { causticTable } from '../lib/design/measuredCaustic.ts';
import { measuredPlaneSource, measuredProfileZ } from '../lib/design/measuredSpot.ts';
import { firstMicrograph, otherMicrograph } from '../lib/design/micrographs.ts';
import type { PictureInputs } from '../lib/design/pictureInputs.ts';
import {
  apertureDiameter,
  designPhase,
  glass,
  madeHeight,
  plateSource,
  raised,
  stepDiameter,
  stop,
  typedIndex,
} from '../lib/design/plate.ts';
import { beamSource, ratioSource } from '../lib/design/rawBeam.ts';
import {
  constantsSource,
  polarisation,
  polarisationAngle,
  typedExtinction,
  typedIndexOfSurface,
} from '../lib/design/rippleInputs.ts';
import { thresholdSource, typedThreshold, typedUncertainty } from '../lib/design/threshold.ts';
import { largestDip, leastContrast, planeGoal } from '../lib/design/usablePlanes.ts';
import { causticOrigin, waistDistance, waistSource } from '../lib/design/waist.ts';
import type { InputQuantity } from '../lib/graph/quantity.ts';
import { barInputsOf, regionInputsOf } from './pictureSpec.ts';

/** An element of the beam path with the inputs it brings, and when each of them counts. */
export interface PathElement {
  readonly heading: string;
  readonly inputs: readonly InputQuantity[];
}

/** Inputs by element of the beam path. */
export const pathElements = {
  laser: {
    heading: 'Laser',
    inputs: [
      wavelength,
      beamSource,
      beamDiameter,
      beamImage,
      beamImagePitch,
      beamImagePitchUncertainty,
      ratioSource,
      beamPropagationRatio,
      causticTable,
      energySource,
      pulseEnergy,
      typedPower,
      repetitionRate,
      pulseDuration,
    ],
  },
  expander: {
    heading: 'Expander',
    inputs: [
      goal,
      expanderKind,
      magnification,
      waistSource,
      waistDistance,
      causticOrigin,
      firstFocalLength,
      separation,
      secondFocalLength,
      expanderPlateDistance,
    ],
  },
  plate: {
    heading: 'Plate and stop',
    inputs: [
      stepDiameter,
      stop,
      apertureDiameter,
      plateSource,
      designPhase,
      madeHeight,
      glass,
      typedIndex,
      raised,
      plateTransmission,
    ],
  },
  lens: {
    heading: 'Lens',
    inputs: [focalLength, distanceMode, typedPlateDistance, fieldCurvature, thermalShift, opticsTransmission],
  },
  workpiece: {
    heading: 'Workpiece',
    inputs: [workpieceZ, material, thresholdSource, typedThreshold, fieldWidth, tilt, heightError],
  },
} satisfies Record<string, PathElement>;

export type PathElementName = keyof typeof pathElements;

/** The element that brings the input of that id. */
export function elementOf(id: string): PathElementName | undefined {
  return (Object.keys(pathElements) as PathElementName[]).find((name) =>
    pathElements[name].inputs.some((input: InputQuantity) => input.id === id),
  );
}

/** A choice and the value that it must have, or one of several. */
type Condition = readonly [choice: string, ...values: string[]];

const lenses: Condition = [expanderKind.id, 'lenses'];

/** Of a picture, the inputs that count for one kind of scale, and those of a part. */
function pictureConditions(inputs: PictureInputs): Readonly<Record<string, readonly Condition[]>> {
  const bar: Condition = [inputs.scaleSource.id, 'bar'];
  const part: Condition = [inputs.regionSource.id, 'part'];
  return {
    [inputs.typedPitch.id]: [[inputs.scaleSource.id, 'typed']],
    ...Object.fromEntries(barInputsOf(inputs).map((input) => [input.id, [bar]])),
    ...Object.fromEntries(regionInputsOf(inputs).map((input) => [input.id, [part]])),
  };
}

/** Inputs that count only while choices have certain values, all of them. */
const conditions: Readonly<Record<string, readonly Condition[]>> = {
  [beamDiameter.id]: [[beamSource.id, 'typed']],
  [pulseEnergy.id]: [[energySource.id, 'typed']],
  [typedPower.id]: [[energySource.id, 'power']],
  [typedThreshold.id]: [[thresholdSource.id, 'typed']],
  [typedUncertainty.id]: [[thresholdSource.id, 'typed']],
  [beamImagePitch.id]: [[beamSource.id, 'measured']],
  [beamImagePitchUncertainty.id]: [[beamSource.id, 'measured']],
  [beamPropagationRatio.id]: [[ratioSource.id, 'typed']],
  [magnification.id]: [[expanderKind.id, 'magnification']],
  [waistSource.id]: [lenses],
  [waistDistance.id]: [lenses, [waistSource.id, 'typed']],
  [causticOrigin.id]: [lenses, [waistSource.id, 'measured']],
  [firstFocalLength.id]: [lenses],
  [separation.id]: [lenses],
  [secondFocalLength.id]: [lenses],
  [expanderPlateDistance.id]: [lenses],
  [apertureDiameter.id]: [[stop.id, 'round']],
  [designPhase.id]: [[plateSource.id, 'designed']],
  [madeHeight.id]: [[plateSource.id, 'made']],
  [typedIndex.id]: [[glass.id, 'typed']],
  [largestDip.id]: [[planeGoal.id, 'flat', 'flatEdge', 'flatArea']],
  [leastContrast.id]: [[planeGoal.id, 'ring', 'ringWidth']],
  [typedPlateDistance.id]: [[distanceMode.id, 'typed']],
  [fullEnergy.id]: [[setting.id, 'attenuator']],
  [secondDepth.id]: [[branches.id, 'two']],
  [secondThreshold.id]: [[branches.id, 'two']],
  ...pictureConditions(markPictureInputs),
  ...pictureConditions(firstMicrograph),
  ...pictureConditions(otherMicrograph),
  [measuredProfileZ.id]: [[measuredPlaneSource.id, 'typed']],
  [polarisationAngle.id]: [[polarisation.id, 'linear']],
  [typedIndexOfSurface.id]: [[constantsSource.id, 'typed']],
  [typedExtinction.id]: [[constantsSource.id, 'typed']],
  [typedAbsorptance.id]: [[absorptanceSource.id, 'typed']],
  [typedConductivity.id]: [[thermalSource.id, 'typed']],
  [typedDensity.id]: [[thermalSource.id, 'typed']],
  [typedSpecificHeat.id]: [[thermalSource.id, 'typed']],
};

/** True where the input counts for the design as it stands. */
export function inputCounts(id: string, inputs: Readonly<Record<string, unknown>>): boolean {
  return (conditions[id] ?? []).every(([choice, ...values]) => values.includes(inputs[choice] as string));
}
