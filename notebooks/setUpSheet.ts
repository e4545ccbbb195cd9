import { profile } from '../lib/design/spot.ts';
import type { StepwellDocument } from './document.ts';
import { prose } from './prose.ts';
import { setUpBlocks } from './setUpSheet/setUpBlocks.ts';

/** One page to take to the laser table; it follows the design. */
export const setUpSheet: StepwellDocument = {
  id: 'set-up-sheet',
  title: 'Set-up sheet',
  element: 'workpiece',
  lead: prose`One page for the laser table: what is set, in which order, what is seen on the way, and when it is good. It follows the design; print it when the design stands.`,
  result: { quantity: profile, missing: 'This design has no spot.' },
  blocks: setUpBlocks,
};
