import { createEngine } from '../graph/engine.ts';
import { createGraph } from '../graph/graph.ts';
import { valueOrThrow } from '../graph/outcome.ts';
import type { NumberInput } from '../graph/quantity.ts';
import { shownValue } from '../graph/shown.ts';
import type { Patch } from '../graph/state.ts';
import { wavelength } from './laser.ts';
import { createPart, type OwnPart, type PartKind } from './ownParts.ts';
import { designPhase, glass, madeHeight, plateSource, stepHeight, stop, typedIndex } from './plate.ts';

/** How to take a part from the design. */
export interface Taking {
  readonly note?: string;
  /** A plate keeps the stop with it: its own edge is what stops the beam. */
  readonly withStop?: boolean;
}

/**
 * The part as it stands in the design. A designed plate becomes a made one, with the height it has at the laser's
 * wavelength; without a note of its own it notes what it was made for. Throws a Problem where that height is unknown
 * or cannot be made, or the name cannot be.
 */
export function takePart(kind: PartKind, name: string, inputs: Patch, taking: Taking = {}): OwnPart {
  const { note = '', withStop = false } = taking;
  const values: Record<string, unknown> = { ...inputs };
  if (!withStop) delete values[stop.id];
  if (kind === 'plate')
    Object.assign(values, { [plateSource.id]: 'made', [madeHeight.id]: heightOf(inputs) });
  return createPart(kind, name, values, note.trim() === '' ? originOf(kind, inputs) : note);
}

const heightGraph = createGraph([stepHeight]);

/** Height of the step in the design, m; throws the Problem of a height that cannot be worked out. */
export function heightOf(inputs: Patch): number {
  return valueOrThrow(createEngine(heightGraph, inputs).evaluate([stepHeight.id])[stepHeight.id]!) as number;
}

/** What a part was made for, where its values alone no longer say so; empty otherwise. */
export function originOf(kind: PartKind, inputs: Patch): string {
  if (kind !== 'plate') return '';
  const show = (input: NumberInput) => shownValue(input, { value: inputs[input.id] });
  const facts = [
    ...(inputs[plateSource.id] === 'designed' ? [`height for ${show(designPhase)}`] : []),
    ...(inputs[glass.id] === 'typed' ? [`refractive index ${show(typedIndex)}`] : []),
  ];
  return facts.length === 0 ? '' : `${facts.join(' and ')} at ${show(wavelength)}`;
}
