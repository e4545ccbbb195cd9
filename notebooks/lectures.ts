import type { StepwellDocument } from './document.ts';
import { prose } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';

/** Lectures: those that come with the program, and the person's own, made here. */
export const lectures: StepwellDocument = {
  id: 'lectures',
  title: 'Lectures',
  lead: prose`An hour from the live pages, one idea on a screen: each step shows what you choose, may set inputs, and may ask the room before the curve is drawn. A lecture is given over a design of its own, so the one that is open stays as it is. Yours are saved with the design, and travel in its file and its link.`,
  learning: true,
  blocks: [{ kind: 'tool', id: 'lectures-list', tool: 'lectures' }, ...pulseCautions],
};
