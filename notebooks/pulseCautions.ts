import {
  airIrradiance,
  peakIrradiance,
  plateBIntegral,
  plateIrradiance,
  unshapedIrradiance,
} from '../lib/design/safety.ts';
import type { Block } from './document.ts';
import { limitBlocks } from './limitSentences.ts';
import { plateOutSaid } from './matchingSentences.ts';
import { prose, term } from './prose.ts';

/** What to think of before single spots are fired. */
export const pulseCautions: readonly Block[] = [
  {
    kind: 'caution',
    id: 'plate-out',
    prose: prose`**Before single spots without the plate.** ${plateOutSaid} Otherwise a row of single spots at the energies of the shaped beam can begin far above the threshold, the fluence from which on the surface is marked.`,
  },
  ...limitBlocks,
  {
    kind: 'table',
    id: 'safety-table',
    table: {
      caption:
        'Peak irradiance along the way: the highest power per area, at any place and moment of a pulse of today’s energy',
      columns: ['', 'value'],
      rows: [
        ['on the plate', plateIrradiance],
        ['on the workpiece, with the plate', peakIrradiance],
        ['on the workpiece, plate taken out at the same energy', unshapedIrradiance],
        ['in air behind the lens, the most there is', airIrradiance],
        ['B-integral: phase that the pulse itself adds in the glass of the plate', plateBIntegral],
      ],
    },
  },
  {
    kind: 'caution',
    id: 'laser-safety',
    prose: prose`**Class 4 laser.** Even its scattered light can injure eyes and skin. None of these numbers says that anything is safe. IEC 60825-1, IEC TR 60825-14 and ISO 11553-1 (memory) apply, and eye safety counts beam radii at 1/e, not at 1/e²; local rules and your laser safety officer decide. A surface that is being marked reflects. What leaves it is fume and fine dust: that of stainless steel holds chromium and nickel, that of copper brings on metal fume fever (memory): work with extraction and filters. ${term('Sources marked', 'source-marks')} “memory” were not at hand when this was written, and of those marked “abstract” only the summary was: look them up before you rely on them.`,
  },
];
