import {
  expanderKind,
  plateDistance as expanderPlateDistance,
  firstFocalLength,
  magnification,
  secondFocalLength,
  separation,
  waistDistance,
} from '../lib/design/expander.ts';
import { workpieceZ } from '../lib/design/focus.ts';
import {
  beamDiameter,
  beamImage,
  beamImagePitch,
  beamPropagationRatio,
  beamSource,
  pulseDuration,
  pulseEnergy,
  repetitionRate,
  wavelength,
} from '../lib/design/laser.ts';
import { distanceMode, focalLength, typedPlateDistance } from '../lib/design/lens.ts';
import { goal } from '../lib/design/match.ts';
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
import type { InputQuantity } from '../lib/graph/quantity.ts';

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
      beamPropagationRatio,
      pulseEnergy,
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
      waistDistance,
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
    ],
  },
  lens: { heading: 'Lens', inputs: [focalLength, distanceMode, typedPlateDistance] },
  workpiece: { heading: 'Workpiece', inputs: [workpieceZ] },
} satisfies Record<string, PathElement>;

export type PathElementName = keyof typeof pathElements;

/** Inputs that count only while a choice has a certain value. */
const conditions: Readonly<Record<string, readonly [choice: string, value: string]>> = {
  [beamDiameter.id]: [beamSource.id, 'typed'],
  [beamImagePitch.id]: [beamSource.id, 'measured'],
  [magnification.id]: [expanderKind.id, 'magnification'],
  [waistDistance.id]: [expanderKind.id, 'lenses'],
  [firstFocalLength.id]: [expanderKind.id, 'lenses'],
  [separation.id]: [expanderKind.id, 'lenses'],
  [secondFocalLength.id]: [expanderKind.id, 'lenses'],
  [expanderPlateDistance.id]: [expanderKind.id, 'lenses'],
  [apertureDiameter.id]: [stop.id, 'round'],
  [designPhase.id]: [plateSource.id, 'designed'],
  [madeHeight.id]: [plateSource.id, 'made'],
  [typedIndex.id]: [glass.id, 'typed'],
  [typedPlateDistance.id]: [distanceMode.id, 'typed'],
};

/** True where the input counts for the design as it stands. */
export function inputCounts(id: string, inputs: Readonly<Record<string, unknown>>): boolean {
  const condition = conditions[id];
  return condition === undefined || inputs[condition[0]] === condition[1];
}
