import { branches, removalDepth, secondDepth, secondThreshold } from '../lib/design/depthLaw.ts';
import { firstPlane, groovePasses, secondPlane } from '../lib/design/grooveInputs.ts';
import { pulseEnergy } from '../lib/design/laser.ts';
import { scanSpeed } from '../lib/design/scanInputs.ts';
import { incubationExponent, thresholdFloor } from '../lib/design/threshold.ts';
import type { Block } from './document.ts';

/** The groove that a line becomes. */
export const grooveBlocks: readonly Block[] = [
  {
    kind: 'controls',
    id: 'groove-controls',
    heading: 'Line and removal',
    inputs: [
      groovePasses,
      firstPlane,
      secondPlane,
      scanSpeed,
      pulseEnergy,
      removalDepth,
      branches,
      secondDepth,
      secondThreshold,
      incubationExponent,
      thresholdFloor,
    ],
  },
];
