import type { StepwellDocument } from './document.ts';
import { prose } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';

/** Three ways through all pages, one for each kind of reader. */
export const readingDocument: StepwellDocument = {
  id: 'reading',
  title: 'Where to begin',
  short: 'Paths',
  learning: true,
  lead: prose`Three ways through these pages, each for another reader and in another order. Nothing has to be read whole: every page stands by itself, and the design goes with you from one to the next.`,
  blocks: [{ kind: 'tool', id: 'paths', tool: 'paths' }, ...pulseCautions],
};
