import { areaPerHour } from '../lib/design/scaleUp.ts';
import type { StepwellDocument } from './document.ts';
import { prose, term } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';
import { scaleUpBlocks } from './scaleUpBlocks.ts';

/** The seventh document: from today's field to square metres. */
export const scaleUp: StepwellDocument = {
  id: 'scale-up',
  title: 'Scale-up',
  element: 'workpiece',
  lead: prose`From one field to square metres: what a larger laser, a faster scanner and several ${term('spots side by side')} bring to the field set under [Throughput](#throughput), which of them stops the work first, how the plain beam would do at its own best, and what more power does to plate, optics and air.`,
  result: { quantity: areaPerHour, missing: 'Nothing can be said about a larger area.' },
  blocks: [...scaleUpBlocks, ...pulseCautions],
};
