import { grooveCut } from '../lib/design/groove.ts';
import type { StepwellDocument } from './document.ts';
import { engravingBlocks } from './engravingBlocks.ts';
import { grooveBlocks } from './grooveBlocks.ts';
import { prose, term } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';
import { sectionBlocks } from './sectionBlocks.ts';
import { sheetBlocks } from './sheetBlocks.ts';

/** The sixth document: what many passes cut, the floor of an engraved field, and when a thin sheet is through. */
export const grooves: StepwellDocument = {
  id: 'grooves',
  title: 'Grooves and engraving',
  short: 'Grooves',
  element: 'workpiece',
  lead: prose`Pass after pass a line becomes a ${term('groove')}, and a field becomes an ${term('engraving', 'layer')}. This page cuts them in the model: cross-section and walls with the plate and without, why a Gaussian goes too deep in the middle, how rough a floor becomes, and when a thin sheet is through.`,
  result: { quantity: grooveCut, missing: 'Nothing can be said about this groove.' },
  blocks: [...grooveBlocks, ...sectionBlocks, ...engravingBlocks, ...sheetBlocks, ...pulseCautions],
};
