import type { StepwellDocument } from './document.ts';
import { prose } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';

/** The ninth document: pages that the person composes. */
export const ownPages: StepwellDocument = {
  id: 'own-pages',
  title: 'Own pages',
  lead: prose`For a talk, a course or the wall beside the table: pages of your own words, of parts of the other pages, and of numbers, inputs, formulas and charts that you choose. All of it follows the design, is saved with it, and travels in its file and its link.`,
  blocks: [{ kind: 'tool', id: 'own-pages-list', tool: 'own-pages' }, ...pulseCautions],
};
