import { ripplePeriod } from '../lib/design/ripples.ts';
import type { StepwellDocument } from './document.ts';
import { micrographBlocks } from './micrographBlocks.ts';
import { prose, term } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';
import { predictionBlocks } from './ripplePredictionBlocks.ts';
import { seriesBlocks } from './rippleSeriesBlocks.ts';
import { usesBlocks } from './rippleUsesBlocks.ts';
import { windowBlocks } from './rippleWindowBlocks.ts';

/** The fourth document: fine ridges on the surface, their period and direction, and how much of a field gets them. */
export const ripples: StepwellDocument = {
  id: 'ripples',
  title: 'Ripples',
  element: 'workpiece',
  lead: prose`Ultrashort pulses near the threshold write ${term('ripples')}: fine parallel ridges, about a wavelength apart, whose direction the ${term('polarisation')} sets. This page predicts period and direction, works out how much of a scanned field lies where ripples grow, with the plate and without it, and sets your own measurements beside that.`,
  result: { quantity: ripplePeriod, missing: 'No period can be predicted for this surface.' },
  blocks: [
    ...predictionBlocks,
    ...windowBlocks,
    ...seriesBlocks,
    ...micrographBlocks,
    ...usesBlocks,
    ...pulseCautions,
  ],
};
