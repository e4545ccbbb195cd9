import { removalDepth } from '../../lib/design/depthLaw.ts';
import { expanderKind, magnification, plateBeamDiameter } from '../../lib/design/expander.ts';
import { workpieceZ } from '../../lib/design/focus.ts';
import { beamImage, pulseDuration, repetitionRate, wavelength } from '../../lib/design/laser.ts';
import { focalLength } from '../../lib/design/lens.ts';
import {
  energySource,
  opticsTransmission,
  plateTransmission,
  usedPulseEnergy,
} from '../../lib/design/losses.ts';
import { material } from '../../lib/design/material.ts';
import { causticTable } from '../../lib/design/measuredCaustic.ts';
import {
  apertureDiameter,
  glass,
  plateIndex,
  plateSource,
  stepDiameter,
  stepHeight,
  stepPhase,
  stop,
} from '../../lib/design/plate.ts';
import {
  beamSource,
  ratioSource,
  usedBeamDiameter,
  usedBeamPropagationRatio,
} from '../../lib/design/rawBeam.ts';
import { spotTable } from '../../lib/design/spots.ts';
import { thresholdFluence, thresholdSource } from '../../lib/design/threshold.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';

/** How far a value is known to be true of the bench: nothing stands behind what was typed. */
export type Standing = 'measured' | 'typed' | 'handbook' | 'worked out';

/** A number of beam, plate or surface, with where it is from. */
export interface Origin {
  readonly quantity: Quantity;
  readonly standing: Standing;
  readonly words: string;
}

type Inputs = Readonly<Record<string, unknown>>;

/** Name of the file that an input holds. */
export function fileNameOf(quantity: Quantity, inputs: Inputs): string {
  const { name } = (inputs[quantity.id] ?? {}) as { readonly name?: unknown };
  return typeof name === 'string' && name !== '' ? name : 'a file without a name';
}

const typed = (quantity: Quantity): Origin => ({ quantity, standing: 'typed', words: 'typed' });

function beamOrigin(inputs: Inputs): Origin {
  const quantity = usedBeamDiameter;
  const source = inputs[beamSource.id];
  if (source === 'measured')
    return { quantity, standing: 'measured', words: `second moments of ${fileNameOf(beamImage, inputs)}` };
  if (source === 'caustic')
    return {
      quantity,
      standing: 'measured',
      words: `waist of the caustic in ${fileNameOf(causticTable, inputs)}`,
    };
  return typed(quantity);
}

function ratioOrigin(inputs: Inputs): Origin {
  const quantity = usedBeamPropagationRatio;
  if (inputs[ratioSource.id] !== 'measured') return typed(quantity);
  return {
    quantity,
    standing: 'measured',
    words: `fitted to the caustic in ${fileNameOf(causticTable, inputs)}`,
  };
}

function energyOrigin(inputs: Inputs): Origin {
  const words =
    inputs[energySource.id] === 'power' ? 'from the average power and rate that were typed' : 'typed';
  return { quantity: usedPulseEnergy, standing: 'typed', words };
}

function thresholdOrigin(inputs: Inputs): Origin {
  const quantity = thresholdFluence;
  const source = inputs[thresholdSource.id];
  if (source === 'fitted')
    return {
      quantity,
      standing: 'measured',
      words: `fitted to the spots in ${fileNameOf(spotTable, inputs)}`,
    };
  if (source === 'handbook')
    return { quantity, standing: 'handbook', words: 'middle of the published range' };
  return typed(quantity);
}

function phaseOrigin(inputs: Inputs): Origin {
  const made = inputs[plateSource.id] === 'made';
  const words = made ? 'from the height that was typed' : 'as the plate was designed, not measured';
  return { quantity: stepPhase, standing: made ? 'worked out' : 'typed', words };
}

function heightOrigin(inputs: Inputs): Origin {
  if (inputs[plateSource.id] === 'made') return typed(stepHeight);
  return { quantity: stepHeight, standing: 'worked out', words: 'from phase, wavelength and glass' };
}

function indexOrigin(inputs: Inputs): Origin {
  if (inputs[glass.id] === 'typed') return typed(plateIndex);
  return {
    quantity: plateIndex,
    standing: 'handbook',
    words: `handbook, ${glass.options[inputs[glass.id] as keyof typeof glass.options]}`,
  };
}

const workedOut = (quantity: Quantity, words: string): Origin => ({
  quantity,
  standing: 'worked out',
  words,
});

/** Where the numbers of beam, plate and surface are from, in the order of the beam path. */
export function originsOf(inputs: Inputs): Origin[] {
  const lenses = inputs[expanderKind.id] === 'lenses';
  return [
    typed(wavelength),
    beamOrigin(inputs),
    ratioOrigin(inputs),
    typed(pulseDuration),
    energyOrigin(inputs),
    typed(repetitionRate),
    typed(opticsTransmission),
    typed(plateTransmission),
    ...(lenses ? [] : [typed(magnification)]),
    workedOut(plateBeamDiameter, lenses ? 'from the lenses of the expander' : 'beam times magnification'),
    typed(stepDiameter),
    phaseOrigin(inputs),
    heightOrigin(inputs),
    indexOrigin(inputs),
    ...(inputs[stop.id] === 'open' ? [] : [typed(apertureDiameter)]),
    typed(focalLength),
    typed(workpieceZ),
    { quantity: material, standing: 'typed', words: 'chosen' },
    thresholdOrigin(inputs),
    typed(removalDepth),
  ];
}
