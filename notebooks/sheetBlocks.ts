import { passesAfter, sheetThickness } from '../lib/design/grooveInputs.ts';
import type { Block } from './document.ts';

/** A thin metal sheet cut along the line. */
export const sheetBlocks: readonly Block[] = [
  { kind: 'controls', id: 'sheet-controls', heading: 'Sheet', inputs: [sheetThickness, passesAfter] },
];
