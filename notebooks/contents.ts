import type { StepwellDocument } from './document.ts';
import { matching } from './matching.ts';

/** The documents in reading order. */
export const documents: readonly StepwellDocument[] = [matching];
