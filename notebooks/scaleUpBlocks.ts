import {
  damageMargin,
  damageThreshold,
  fieldOverlap,
  largeAcceleration,
  largeMaxPower,
  largeMaxPulseEnergy,
  largeMaxRepetitionRate,
  largeMaxSpeed,
  moveTime,
  opticsAbsorption,
  splitterEfficiency,
  spotDistance,
  spots,
  targetRate,
} from '../lib/design/scaleUpInputs.ts';
import type { Block } from './document.ts';

/** From today's field to square metres. */
export const scaleUpBlocks: readonly Block[] = [
  {
    kind: 'controls',
    id: 'scale-up-controls',
    heading: 'The larger machine',
    inputs: [
      targetRate,
      largeMaxPower,
      largeMaxPulseEnergy,
      largeMaxRepetitionRate,
      largeMaxSpeed,
      largeAcceleration,
      spots,
      splitterEfficiency,
      spotDistance,
      moveTime,
      fieldOverlap,
    ],
  },
  {
    kind: 'controls',
    id: 'plate-damage-controls',
    heading: 'Plate and optics',
    inputs: [damageThreshold, damageMargin, opticsAbsorption],
  },
];
