import type { Block, StepwellDocument } from '../document.ts';

/** Uses that a design may be for; each has its own part of the rationale. */
export const useNames = {
  ripples: 'ripples',
  grooves: 'grooves',
  engraving: 'an engraved field',
  sheet: 'a cut through a thin sheet',
  scaleUp: 'a larger machine',
} as const;

export type UseName = keyof typeof useNames;

/** Parts that the person may write something for, with what is asked there. */
export const ownTexts = {
  purpose: {
    heading: 'Purpose',
    asks: 'What is it for, and what must the surface be able to do in the end?',
  },
  step: { heading: 'The step', asks: 'Why this step and this stop, and not others?' },
  plane: { heading: 'The plane', asks: 'Why does the workpiece stand in this plane?' },
  fluence: { heading: 'The fluence', asks: 'Why this pulse energy?' },
  spacing: { heading: 'The spacing', asks: 'Why these distances between pulses and lines?' },
  risks: { heading: 'Risks and cautions', asks: 'What can go wrong here, and what is done about it?' },
  unchecked: { heading: 'What was not checked', asks: 'What do you know that you have not checked?' },
} as const;

export type OwnTextName = keyof typeof ownTexts;

/** A part of the rationale that is made of blocks of the documents. */
export interface Section {
  readonly id: string;
  readonly heading: string;
  readonly level: 1 | 2;
  /** The person's own words stand before the blocks. */
  readonly own?: OwnTextName;
  /** It stands there for this use only. */
  readonly use?: UseName;
  readonly blocks: readonly Block[];
}

/** A block of a document by its id; an id that is not there is a mistake of the program. */
export function blockOf(document: StepwellDocument, id: string): Block {
  const found = document.blocks.find((block) => block.id === id);
  if (!found) throw new Error(`The document ${document.id} has no block ${id}.`);
  return found;
}

/** Several blocks of a document, in this order. */
export function blocksOf(document: StepwellDocument, ...ids: readonly string[]): Block[] {
  return ids.map((id) => blockOf(document, id));
}

/** A warning about a measurement is part of what that says, not one of the cautions. */
export function asProse(block: Block): Block {
  return block.kind === 'caution' ? { ...block, kind: 'prose' } : block;
}
