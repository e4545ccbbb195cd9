import { rayleighLength } from '../../lib/design/focus.ts';
import {
  unshapedAsked,
  unshapedEffectiveArea,
  unshapedMarkDiameter,
  unshapedThresholdLevel,
} from '../../lib/design/marks.ts';
import { usedBeamPropagationRatio } from '../../lib/design/rawBeam.ts';
import { math, prose, term } from '../prose.ts';
import { choiceTask } from './lesson.ts';
import { lineFigure, marksFigure, threeEnergiesFigure } from './thresholdPlotFigures.ts';

/** How diameters grow while the energy is doubled twice. */
function growth([one, two, four]: readonly number[]): string {
  const even = (a: number, b: number) => Math.abs(a / b - 1) < 0.05;
  if (even(two! ** 2 - one! ** 2, four! ** 2 - two! ** 2)) return 'squares-add';
  if (even(two! - one!, four! - two!)) return 'diameters-add';
  return even(two! / one!, 2) ? 'diameters-double' : 'squares-double';
}

export const doubling = choiceTask({
  id: 'doubling',
  stage: 'predict',
  question: prose`
    A pulse leaves a mark where its **${term('fluence')}**, energy per area, lies above the **${term('threshold')}** of the surface, the line in the picture. The curves are one and the same spot, without the plate, at three energies. You fire single pulses and double the energy each time. What do the diameters ${math`D`} of the marks do?
  `,
  shows: [threeEnergiesFigure],
  reveals: [marksFigure],
  from: { spot: unshapedAsked, level: unshapedThresholdLevel, now: unshapedMarkDiameter },
  options: {
    'diameters-double': 'D doubles with each step',
    'squares-double': 'D², and with it the area, doubles with each step',
    'diameters-add': 'D grows by the same length with each step',
    'squares-add': 'D², and with it the area, grows by the same amount with each step',
  },
  // Twice the energy halves the threshold as a part of the peak.
  answer: ({ spot, level, now }) =>
    growth([now, ...[2, 4].map((factor) => 2 * Math.sqrt(spot.areaAbove(level / factor) / Math.PI))]),
  errors: [
    {
      id: 'diameter-with-energy',
      reason: prose`Look where the curves cross the line: the flanks are steep there, so twice the height moves the crossing only a little outward.`,
      answer: ({ now }) => growth([now, 2 * now, 4 * now]),
    },
    {
      id: 'area-with-energy',
      reason: prose`That would be so if each part of the energy marked its own bit of surface. But most of the added energy lands where the surface is marked already.`,
      answer: ({ now }) => growth([now, Math.SQRT2 * now, 2 * now]),
    },
    {
      id: 'diameter-in-steps',
      reason: prose`Nearly. The steps of ${math`D`} itself become shorter from one to the next, as the flanks show; it is another measure of the mark that grows evenly. Compare the squares of the diameters too.`,
      answer: ({ now }) => growth([now, 1.4 * now, 1.8 * now]),
    },
  ],
  explanation: prose`
    A Gaussian falls as ${math`e^{-2r^2/w^2}`}, so its crossing with the threshold lies where ${math`r^2`} grows with the logarithm of the energy: each doubling adds the same to ${math`D^2`}. In symbols ${math`D^2 = 2w^2\ln(E/E_\text{th})`}, where ${math`w`} is the **1/e² radius** of the spot, at which the fluence has fallen to 13.5 % of its peak, and ${math`E_\text{th}`} the energy whose peak just reaches the threshold.
  `,
});

/** What becomes of the plot where slope and threshold energy change by these factors. */
function moved(slope: number, energy: number): string {
  const up = (factor: number) => factor > 1.05;
  if (up(slope)) return up(energy) ? 'steeper-right' : 'steeper-same';
  return up(energy) ? 'same-right' : 'flatter-left';
}

/** How much more area the spot has a Rayleigh length of the perfect beam out of focus: its own is M² times as long. */
const wider = (ratio: number) => 1 + 1 / ratio ** 2;

export const defocused = choiceTask({
  id: 'defocused',
  stage: 'explain',
  question: prose`
    You make the same plot again, now with the workpiece ${rayleighLength} behind the focus, where the spot is wider. The surface is the same. How does the line change?
  `,
  shows: [lineFigure],
  from: { area: unshapedEffectiveArea, length: rayleighLength, ratio: usedBeamPropagationRatio },
  options: {
    'steeper-right': 'It is steeper, and meets zero further right',
    'steeper-same': 'It is steeper, and meets zero where it did',
    'same-right': 'It is as steep as before, and meets zero further right',
    'flatter-left': 'It is flatter, and meets zero further left',
  },
  answer: ({ area, length }, ask) => {
    const factor = ask({ set: { 'workpiece.z': length } }).area / area;
    return moved(factor, factor);
  },
  errors: [
    {
      id: 'energy-of-surface',
      reason: prose`What belongs to the surface is the threshold **fluence**. A wider spot spreads its energy over more area, so it takes more energy to reach it.`,
      answer: ({ ratio }) => moved(wider(ratio), 1),
    },
    {
      id: 'radius-in-focus',
      reason: prose`The slope is ${math`2w^2`} with the radius of the spot where the surface is, and that has grown; it is not the radius in the focus.`,
      answer: ({ ratio }) => moved(1, wider(ratio)),
    },
    {
      id: 'other-way',
      reason: prose`It is the other way round: a wider spot makes the marks grow faster with each step of energy, and needs more energy to begin with.`,
      answer: ({ ratio }) => moved(1 / wider(ratio), 1 / wider(ratio)),
    },
  ],
  explanation: prose`
    Both grow alike, with ${math`w^2`}: the slope is ${math`2w^2`}, the crossing ${math`E_\text{th} = F_\text{th}\,\pi w^2/2`}. Their quotient, the threshold fluence, stays the same. So the plot gives the right threshold even when the workpiece did not stand quite in focus, as long as all marks were made in one plane.
  `,
});
