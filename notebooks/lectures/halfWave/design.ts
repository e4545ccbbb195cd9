import type { Patch } from '../../../lib/graph/state.ts';
import type { OwnBlock } from '../../../lib/graph/studies.ts';

/** Half a wave, rad. */
export const halfWave = Math.PI;
/** Level on the axis without a stop, and flat: 0.363 and 0.442 Rayleigh lengths behind the focus, m. */
export const levelPlane = 47.6e-6;
export const flatPlane = 58e-6;
/** Between the two, where a beam beside the middle shows most, m. */
export const nearlyFlatPlane = 52e-6;

/**
 * The table of the lecture: every input that a number of it rests on, so that each step is the same over whatever design
 * the lecture is kept with.
 */
const table: Patch = {
  'laser.wavelength': 1030e-9,
  'laser.beamSource': 'typed',
  'laser.beamDiameter': 5e-3,
  'laser.ratioSource': 'typed',
  'laser.beamPropagationRatio': 1,
  'laser.energySource': 'typed',
  'laser.pulseEnergy': 2e-6,
  'losses.opticsTransmission': 1,
  'losses.plateTransmission': 1,
  'expander.kind': 'magnification',
  'expander.magnification': 2,
  'plate.source': 'designed',
  'plate.designPhase': halfWave,
  'plate.glass': 'fusedSilica',
  'plate.raised': 'centre',
  'plate.stepDiameter': 10e-3,
  'plate.stop': 'open',
  'plate.apertureDiameter': 14e-3,
  'lens.distanceMode': 'focal',
  'lens.focalLength': 0.1,
  'workpiece.z': 0,
  'threshold.source': 'typed',
  'threshold.typedFluence': 2000,
  'threshold.typedUncertainty': 0,
  'threshold.pulses': 1,
  'focus.depthTolerance': 0.05,
};

/** What a step sets: the table of the lecture, with what the step changes. */
export const onTable = (changes: Patch = {}): Patch => ({ ...table, ...changes });

/** A block of a document. */
export const shows = (document: string, block: string, title?: string): OwnBlock => ({
  kind: 'block',
  document,
  block,
  ...(title !== undefined && { title }),
});

/**
 * The fluence across the spot, its axis up to what the shaped spot needs: beside the plain one, five times as high, ring
 * and flat spot look alike. The plain one leaves the chart at the top.
 */
export const spotProfile = (title: string): OwnBlock => ({
  kind: 'block',
  document: 'matching',
  block: 'profile',
  title,
  caption: 'The axis is drawn for the shaped spot: a higher curve leaves the chart.',
  y: [0, 0.7],
});

/** Words on the screen. */
export const says = (text: string): OwnBlock => ({ kind: 'text', text });

/** Inputs for the lecturer to move. */
export const moves = (title: string, ...ids: readonly string[]): OwnBlock => ({
  kind: 'controls',
  ids,
  title,
});

/** Numbers side by side. */
export const numbers = (title: string, ...ids: readonly string[]): OwnBlock => ({
  kind: 'values',
  ids,
  title,
});
