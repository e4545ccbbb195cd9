import { branches, removalDepth, secondDepth, secondThreshold } from '../lib/design/depthLaw.ts';
import {
  areaPerEnergy,
  flatTopAreaPerEnergy,
  gaussianAreaPerEnergy,
  highFluence,
  lowFluence,
  windowGain,
} from '../lib/design/fluenceWindow.ts';
import {
  bestVolumePerEnergy,
  crater,
  deepest,
  flatTopBest,
  gaussianBest,
  removalGain,
  unshapedCrater,
  unshapedDeepest,
} from '../lib/design/removal.ts';
import { pulsesOnPlace } from '../lib/design/threshold.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, micro } from './columns.ts';
import { type Block, type FigureSpec, figure } from './document.ts';
import { math, prose } from './prose.ts';
import { craterSaid, removalGainSaid, todayInWindowSaid, windowGainSaid } from './removalSentences.ts';

const nano = 1e9;

/** Cut through the crater that the pulses on a place dig, with the plate and without it. */
export const craterFigure = figure({
  id: 'crater',
  from: { crater, unshapedCrater, deepest, unshapedDeepest, N: pulsesOnPlace },
  view: ({ crater, unshapedCrater, N, ...deep }): FigureSpec => {
    const down = (depth: Float64Array) => depth.map((d) => (d === 0 ? 0 : -d * nano));
    const across = (x: Float64Array) => x.map((length) => length * micro);
    const end = niceEnd(1.05 * nano * largest(crater.depth, unshapedCrater.depth)) || 1;
    const reach = niceEnd(micro * largest(crater.x, unshapedCrater.x));
    const pulses = N === 1 ? 'one pulse' : `${shownValue(pulsesOnPlace, { value: N })} pulses`;
    return {
      title: 'Cut through the crater',
      x: { label: 'distance from the axis', unit: 'µm', domain: [-reach, reach] },
      y: { label: 'height of the surface', unit: 'nm', domain: [-end, 0] },
      series: [
        { label: 'with the plate', role: 'main', x: across(crater.x), y: down(crater.depth) },
        {
          label: 'plate taken out, same energy',
          role: 'reference',
          x: across(unshapedCrater.x),
          y: down(unshapedCrater.depth),
        },
      ],
      summary:
        deep.deepest === 0 && deep.unshapedDeepest === 0
          ? `After ${pulses} nothing is removed, with the plate or without it.`
          : `After ${pulses}: ${shownValue(deepest, { value: deep.deepest })} deep with the plate, ${shownValue(unshapedDeepest, { value: deep.unshapedDeepest })} without it. Depth and width are not drawn to one scale; walls, melt and recast are left out.`,
    };
  },
});

/** What is removed, and where the plate pays. */
export const removalBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'removal',
    prose: prose`
      ## What is removed, and where the plate pays

      Above the threshold a pulse removes a depth that grows with the logarithm of the fluence, ${math`\delta\,\ln(F/F_\text{th})`}: the depth per pulse δ for every factor *e* above the threshold. ${craterSaid}
    `,
  },
  {
    kind: 'controls',
    id: 'removal-controls',
    heading: 'Removal and the window of fluence',
    inputs: [removalDepth, branches, secondDepth, secondThreshold, lowFluence, highFluence],
  },
  craterFigure,
  {
    kind: 'prose',
    id: 'removal-gain',
    prose: prose`**Volume.** ${removalGainSaid} The comparison holds for single craters, the hollows that pulses on one place leave, not for grooves, whose pulses overlap.`,
  },
  {
    kind: 'prose',
    id: 'window-gain',
    prose: prose`**Area within a window.** Ripples, colours and other structures come between two fluences and are spoilt above. ${windowGainSaid} ${todayInWindowSaid} Common practice (no source) reports about a factor of two in time for even ripples; in this model that takes a narrow window, its upper bound about 1.3 times the lower.`,
  },
  {
    kind: 'table',
    id: 'removal-table',
    table: {
      caption: 'Per energy, each at its own best peak',
      columns: ['', 'with the plate', 'Gaussian', 'ideal flat-top, an even disc', 'plate over Gaussian'],
      rows: [
        ['volume removed', bestVolumePerEnergy, gaussianBest, flatTopBest, removalGain],
        ['area within the window', areaPerEnergy, gaussianAreaPerEnergy, flatTopAreaPerEnergy, windowGain],
      ],
    },
  },
];
