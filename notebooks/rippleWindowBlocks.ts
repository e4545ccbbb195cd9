import { accumulatedFluence, unshapedAccumulatedFluence } from '../lib/design/accumulated.ts';
import { highFluence, lowFluence } from '../lib/design/fluenceWindow.ts';
import { pulseEnergy } from '../lib/design/laser.ts';
import { energySource, usedPulseEnergy } from '../lib/design/losses.ts';
import {
  areaInWindow,
  areaTooLittle,
  areaTooMuch,
  surfacePeak,
  unshapedAreaInWindow,
  unshapedAreaTooLittle,
  unshapedAreaTooMuch,
} from '../lib/design/rippleParts.ts';
import { pulsesHigh, pulsesLow, unshapedRuns, windowHigh, windowLow } from '../lib/design/rippleWindow.ts';
import { lineSpacing, passes, pulseSpacing, scanSpeed } from '../lib/design/scanInputs.ts';
import { incubationExponent } from '../lib/design/threshold.ts';
import type { Block } from './document.ts';
import { prose, sets } from './prose.ts';
import { insideFigure, planeGainFigure } from './rippleWindowFigures.ts';
import {
  fieldSaid,
  gainsApartSaid,
  incubationInWindowSaid,
  ownWindowSaid,
  peakInWindowSaid,
  planeGainSaid,
} from './rippleWindowSentences.ts';

const takeOver = sets(
  'take over the window of the page Fluence and threshold',
  ({ low, high }) => ({ [windowLow.id]: low, [windowHigh.id]: high }),
  { low: lowFluence, high: highFluence },
);
const toTheTop = sets(
  'set the pulse energy so that the peak lies at the upper bound',
  ({ energy, peak, high }) => ({ [energySource.id]: 'typed', [pulseEnergy.id]: (energy * high) / peak }),
  { energy: usedPulseEnergy, peak: surfacePeak, high: windowHigh },
);

/** How much of a scanned field lies where ripples grow. */
export const windowBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'window',
    prose: prose`
      ## The window

      Ripples grow between two bounds of the fluence, and between two of the number of pulses on a place, tens to some hundreds. **Too much** fluence or too many pulses, and micro-grooves some micrometres apart take their place, then spikes. **Too little**, and the surface stays smooth or holds only fine or irregular ripples (common practice). All four bounds are inputs: the values here are places to start from, to be measured on your own surface; or ${takeOver}.

      ${peakInWindowSaid} You can ${toTheTop}. ${incubationInWindowSaid} ${ownWindowSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'window-controls',
    heading: 'Window and scan',
    inputs: [
      windowLow,
      windowHigh,
      pulsesLow,
      pulsesHigh,
      incubationExponent,
      scanSpeed,
      lineSpacing,
      passes,
      unshapedRuns,
    ],
  },
  {
    kind: 'table',
    id: 'field-table',
    table: {
      caption: 'Parts of a wide scanned field',
      columns: ['', 'with the plate', 'plate taken out'],
      rows: [
        ['inside the window', areaInWindow, unshapedAreaInWindow],
        ['at too little', areaTooLittle, unshapedAreaTooLittle],
        ['at too much', areaTooMuch, unshapedAreaTooMuch],
        ['mean accumulated fluence', accumulatedFluence, unshapedAccumulatedFluence],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'field-said',
    prose: prose`
      ${fieldSaid} Pulses land ${pulseSpacing} apart on lines ${lineSpacing} apart. A narrower spot gets fewer pulses to a place at the same speed; which beam does more in an hour, each at its own best, is another question.
    `,
  },
  insideFigure,
  {
    kind: 'prose',
    id: 'gains-apart',
    prose: prose`
      ### One pulse, and a field

      ${gainsApartSaid}

      For a single pulse a narrow window, an upper bound of about 1.3 times the lower one, would give about twice the area with the plate, and a wide one a quarter more at most (worked out for beam and step of one size, without a stop). For a whole field about half the time is reported with the plate (common practice, no source); no number here shows that.
    `,
  },
  planeGainFigure,
  {
    kind: 'prose',
    id: 'plane-gain-said',
    prose: prose`${planeGainSaid}`,
  },
];
