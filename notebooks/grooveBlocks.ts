import { branches, removalDepth, secondDepth, secondThreshold } from '../lib/design/depthLaw.ts';
import { firstGroove, groove, plainGroove, plainPeakFluence, secondGroove } from '../lib/design/groove.ts';
import { equalFirst, equalPlain, equalPlainSameLens, equalSecond } from '../lib/design/grooveEqualParts.ts';
import { firstPlane, groovePasses, secondPlane } from '../lib/design/grooveInputs.ts';
import { firstPeakFluence, secondPeakFluence } from '../lib/design/groovePlanes.ts';
import { pulseEnergy } from '../lib/design/laser.ts';
import { unshapedRuns } from '../lib/design/rippleWindow.ts';
import { pulseSpacing, scanSpeed } from '../lib/design/scanInputs.ts';
import { peakFluence } from '../lib/design/spot.ts';
import { incubationExponent, thresholdFloor } from '../lib/design/threshold.ts';
import type { Block } from './document.ts';
import {
  depthByPassFigure,
  grooveSectionFigure,
  grooveSideFigures,
  ratioByPeakFigure,
} from './grooveFigures.ts';
import {
  besideSaid,
  countingSaid,
  equalSaid,
  equalSecondSaid,
  farAboveSaid,
  grooveSaid,
  plainEnergySaid,
  sameLensSaid,
  shallowSaid,
  sideSaid,
  stoppedSaid,
  vSaid,
} from './grooveSentences.ts';
import { math, prose } from './prose.ts';

const closedForm = math`d(y)=\frac{2\sqrt2}{3}\frac{\delta w}{p}\left[\ln\frac{F_0}{F_\text{th}}-\frac{2y^2}{w^2}\right]^{3/2}`;
const threshold = math`F_\text{th}`;
const peak = math`F_0`;
const wallStop = math`\sqrt{(F/F_\text{th})^2-1}`;

/** The groove that a line becomes. */
export const grooveBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'groove',
    prose: prose`
      ## The groove

      A pulse removes metal where its fluence, its energy per area, lies above the threshold. Pulses along a line join into a groove, and every further pass over the line takes it deeper. ${grooveSaid} ${stoppedSaid} ${besideSaid} ${farAboveSaid}
    `,
  },
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
  grooveSectionFigure,
  {
    kind: 'caution',
    id: 'groove-left-out',
    prose: prose`**What the picture leaves out.** Melt that flows and sets again (recast), debris that falls back, light that one wall sends to the other, and the chemistry of the air. Real grooves of a Gaussian often close up by melt and recast, which the model does not show. All of it acts most in grooves deeper than wide: measure a cross-section before relying on one.`,
  },
  {
    kind: 'prose',
    id: 'groove-model',
    prose: prose`
      ### How it is worked out

      Each pass removes, at every place across the line, what the pulses take away that run over it: a depth δ for each factor *e* of fluence over threshold (the depth per pulse above), summed along the line at a pulse spacing of ${pulseSpacing}. The fluence is that of the plane in which the floor lies by then, since a deeper floor is further from the focus, and on a wall that slopes by the angle α it is spread out, so that *F* cos α counts of a fluence *F*. ${countingSaid}

      Where *F* cos α comes down to the threshold ${threshold} a wall stops: at a slope, height over width, of ${wallStop} (first order, without what the wall reflects). Before walls and defocus count, a Gaussian of 1/e² radius *w* and peak fluence ${peak}, its pulses *p* apart, digs at the distance *y* from the middle of the line

      ${closedForm}

      whose middle is 1.70 times as deep as its mean. Its flanks reach less than its middle, line after line; a flat-top gives every place the same while it passes, but passes longer over the middle than over the sides, since it is round; a ring spares the middle and makes up for that.
    `,
  },
  depthByPassFigure,
  {
    kind: 'prose',
    id: 'groove-side',
    prose: prose`
      ### In other planes, and without the plate

      The same passes cut another groove where the workpiece stands in another plane, since the profile there is another one. Two such planes, the first and the second, are inputs of the design. ${sideSaid} ${plainEnergySaid}
    `,
  },
  grooveSideFigures,
  {
    kind: 'controls',
    id: 'groove-plain-controls',
    heading: 'The beam without the plate',
    inputs: [unshapedRuns],
  },
  {
    kind: 'table',
    id: 'groove-table',
    table: {
      caption: 'Grooves after the same passes',
      columns: ['', 'today', 'first plane', 'second plane', 'plate taken out'],
      rows: [
        ['depth, greatest', groove.depth, firstGroove.depth, secondGroove.depth, plainGroove.depth],
        [
          'depth, mean over the top width',
          groove.meanDepth,
          firstGroove.meanDepth,
          secondGroove.meanDepth,
          plainGroove.meanDepth,
        ],
        [
          'width at the top',
          groove.topWidth,
          firstGroove.topWidth,
          secondGroove.topWidth,
          plainGroove.topWidth,
        ],
        [
          'width at the bottom',
          groove.bottomWidth,
          firstGroove.bottomWidth,
          secondGroove.bottomWidth,
          plainGroove.bottomWidth,
        ],
        [
          'angle of the walls',
          groove.wallAngle,
          firstGroove.wallAngle,
          secondGroove.wallAngle,
          plainGroove.wallAngle,
        ],
        [
          'middle over mean depth',
          groove.centreToMeanDepth,
          firstGroove.centreToMeanDepth,
          secondGroove.centreToMeanDepth,
          plainGroove.centreToMeanDepth,
        ],
        [
          'depth of the last pass',
          groove.lastPassDepth,
          firstGroove.lastPassDepth,
          secondGroove.lastPassDepth,
          plainGroove.lastPassDepth,
        ],
        [
          'peak fluence on the fresh surface',
          peakFluence,
          firstPeakFluence,
          secondPeakFluence,
          plainPeakFluence,
        ],
      ],
    },
  },
  {
    kind: 'prose',
    id: 'groove-equal',
    prose: prose`
      ## Gaussian, flat-top and ring on equal terms

      ${equalSaid} ${equalSecondSaid} ${sameLensSaid}

      All have the width at the top and the mean depth of the groove in the first plane, so that they differ in shape only. The size of the focus is free, as another lens or expander would make it; peak fluence and pulse spacing are the same, and as many passes are taken as give the depth, the last of them in part. ${shallowSaid} ${vSaid}
    `,
  },
  {
    kind: 'table',
    id: 'groove-equal-table',
    table: {
      caption: 'Grooves of equal width at the top and equal mean depth',
      columns: ['', 'first plane', 'second plane', 'plain, other focus', 'plain, today’s lens'],
      rows: [
        [
          'angle of the walls',
          equalFirst.wallAngle,
          equalSecond.wallAngle,
          equalPlain.wallAngle,
          equalPlainSameLens.wallAngle,
        ],
        [
          'middle over mean depth',
          equalFirst.centreToMeanDepth,
          equalSecond.centreToMeanDepth,
          equalPlain.centreToMeanDepth,
          equalPlainSameLens.centreToMeanDepth,
        ],
        [
          'width at the bottom',
          equalFirst.bottomWidth,
          equalSecond.bottomWidth,
          equalPlain.bottomWidth,
          equalPlainSameLens.bottomWidth,
        ],
        [
          'width at the top',
          equalFirst.topWidth,
          equalSecond.topWidth,
          equalPlain.topWidth,
          equalPlainSameLens.topWidth,
        ],
        [
          'depth, mean over the top width',
          equalFirst.meanDepth,
          equalSecond.meanDepth,
          equalPlain.meanDepth,
          equalPlainSameLens.meanDepth,
        ],
        ['depth, greatest', equalFirst.depth, equalSecond.depth, equalPlain.depth, equalPlainSameLens.depth],
        [
          'size of the focus, with today’s as 1',
          equalFirst.scale,
          equalSecond.scale,
          equalPlain.scale,
          equalPlainSameLens.scale,
        ],
        [
          'peak fluence',
          equalFirst.peakFluence,
          equalSecond.peakFluence,
          equalPlain.peakFluence,
          equalPlainSameLens.peakFluence,
        ],
        ['passes', equalFirst.passes, equalSecond.passes, equalPlain.passes, equalPlainSameLens.passes],
      ],
    },
  },
  ratioByPeakFigure,
];
