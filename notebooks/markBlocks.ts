import { mapScale } from '../lib/design/familyMap.ts';
import { workpieceZ } from '../lib/design/focus.ts';
import { pulseEnergy } from '../lib/design/laser.ts';
import { typedPower } from '../lib/design/losses.ts';
import { growthAgainst, growthShows } from '../lib/design/markGrowths.ts';
import { incubationExponent, pulsesOnPlace } from '../lib/design/threshold.ts';
import type { Block } from './document.ts';
import { growthFigure, markFigure } from './markFigures.ts';
import { dipMarkSaid, markSaid, unshapedMarkSaid } from './markSentences.ts';
import { math, prose } from './prose.ts';
import { takenAsGaussianBlocks } from './takenAsGaussian.ts';
import { mapFigure } from './throughFocusFigures.ts';

/** The predicted mark: to scale, growing with the energy, and through the focus. */
export const markBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'mark-said',
    prose: prose`
      ## The mark, as predicted

      ${markSaid} ${unshapedMarkSaid}

      ${dipMarkSaid}
    `,
  },
  markFigure,
  {
    kind: 'controls',
    id: 'mark-controls',
    heading: 'Move the workpiece, change the energy',
    inputs: [workpieceZ, pulseEnergy, typedPower],
  },
  {
    kind: 'prose',
    id: 'growth',
    prose: prose`A mark grows with the energy, since more of the spot comes above the threshold. For a Gaussian its diameter follows ${math`D^2 = 2w^2\ln(E/E_\text{th})`} (J. M. Liu, Opt. Lett. 7, 196 (1982)): the square of the diameter is a straight line over the logarithm of the energy. A flat-top does not: it is wide as soon as it appears and then grows little, and where a side lobe rises above the threshold the diameter jumps. More pulses on a place lower the threshold where they prepare it for one another, and the mark grows as it does with energy.`,
  },
  growthFigure,
  {
    kind: 'controls',
    id: 'growth-controls',
    heading: 'What the chart shows',
    inputs: [growthShows, growthAgainst, pulsesOnPlace, incubationExponent],
  },
  ...takenAsGaussianBlocks,
  {
    kind: 'prose',
    id: 'through-focus',
    prose: prose`Along the beam the mark grows, closes and opens with the spot. On the map below the line encloses what lies above the threshold: a workpiece anywhere on it is marked where its plane cuts the enclosed part.`,
  },
  mapFigure,
  { kind: 'controls', id: 'map-controls', heading: 'The map', inputs: [workpieceZ, mapScale] },
];
