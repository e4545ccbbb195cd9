import { burstSpacing, pulsesPerBurst } from '../lib/design/burst.ts';
import { fieldWidth } from '../lib/design/depthInUse.ts';
import { repetitionRate } from '../lib/design/laser.ts';
import { lineSpacing, passes, scanSpeed } from '../lib/design/scanInputs.ts';
import {
  acceleration,
  directions,
  fieldHeight,
  hatchAngle,
  interlacing,
  lineDelay,
  maxSpeed,
  turnRound,
} from '../lib/design/scannerInputs.ts';
import type { Block } from './document.ts';

/** Pulses on lines, lines on a field, and the time they take. */
export const hatchBlocks: readonly Block[] = [
  {
    kind: 'controls',
    id: 'hatch-controls',
    heading: 'Field and scanner',
    inputs: [
      fieldWidth,
      fieldHeight,
      repetitionRate,
      scanSpeed,
      lineSpacing,
      passes,
      hatchAngle,
      interlacing,
      directions,
      turnRound,
      lineDelay,
      acceleration,
      maxSpeed,
      pulsesPerBurst,
      burstSpacing,
    ],
  },
];
