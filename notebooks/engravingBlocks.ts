import { engravingLayers, wantedDepth } from '../lib/design/grooveInputs.ts';
import { lineSpacing } from '../lib/design/scanInputs.ts';
import { hatchAngle } from '../lib/design/scannerInputs.ts';
import type { Block } from './document.ts';

/** A field engraved layer by layer. */
export const engravingBlocks: readonly Block[] = [
  {
    kind: 'controls',
    id: 'engraving-controls',
    heading: 'Layers',
    inputs: [engravingLayers, hatchAngle, lineSpacing, wantedDepth],
  },
];
