import { accumulatedFluence } from '../lib/design/accumulated.ts';
import { comparisonBlocks } from './comparisonBlocks.ts';
import type { StepwellDocument } from './document.ts';
import { fieldBlocks, hatchBlocks } from './hatchBlocks.ts';
import { heatBlocks } from './heatBlocks.ts';
import { edgeBlocks, pathBlocks } from './pathBlocks.ts';
import { planeMetBlocks } from './planeMetBlocks.ts';
import { prose, term } from './prose.ts';
import { pulseCautions } from './pulseCautions.ts';
import { uniformityBlocks } from './uniformityBlocks.ts';

/** The fifth document: from one spot to a whole field, how long it takes, how even it is and what limits it. */
export const throughput: StepwellDocument = {
  id: 'throughput',
  title: 'Throughput',
  element: 'workpiece',
  lead: prose`A ${term('field')} is written pulse by pulse and line by line. This page says how long that takes and what limits it, how even the field becomes, how flat the part must lie, how warm it gets, and how much the plate gains against the plain beam when each is set at its own best. [Scale-up](#scale-up) goes on from this field to square metres.`,
  result: { quantity: accumulatedFluence, missing: 'Nothing can be said about this field.' },
  blocks: [
    ...fieldBlocks,
    ...pathBlocks,
    ...hatchBlocks,
    ...edgeBlocks,
    ...uniformityBlocks,
    ...planeMetBlocks,
    ...heatBlocks,
    ...comparisonBlocks,
    ...pulseCautions,
  ],
};
