import { plateBeamDiameter } from '../../lib/design/expander.ts';
import { defocus, focusRadius, rayleighLength, workpieceZ } from '../../lib/design/focus.ts';
import { convergence, modelError } from '../../lib/design/limits.ts';
import { stepRatio } from '../../lib/design/match.ts';
import { foundMark } from '../../lib/design/pictureMark.ts';
import { stop } from '../../lib/design/plate.ts';
import { peakFluence } from '../../lib/design/spot.ts';
import { thresholdAtN } from '../../lib/design/threshold.ts';
import type { Block } from '../document.ts';
import { plainRunsSaid, pulsesSaid } from '../hatchSentences.ts';
import { matching } from '../matching.ts';
import { orderSaid, sensitivitySaid, whySaid } from '../matchingReasons.ts';
import {
  beamAgainstStep,
  phaseSaid,
  profileSaid,
  ratioPlace,
  ruleSaid,
  specialSaid,
  stopRatioSaid,
  stopSaid,
} from '../matchingSentences.ts';
import { math, prose } from '../prose.ts';
import { removalGainSaid, todayInWindowSaid, windowGainSaid } from '../removalSentences.ts';
import { threshold } from '../threshold.ts';
import {
  aboveThresholdSaid,
  effectiveAreaSaid,
  energySaid,
  incubationSaid,
  thresholdDoubtSaid,
  thresholdSaid,
} from '../thresholdSentences.ts';
import { throughput } from '../throughput.ts';
import { closerLinesSaid, evenSaid, noneBelowSaid } from '../uniformitySentences.ts';
import { blockOf, blocksOf, type Section } from './section.ts';

const said = (id: string, text: ReturnType<typeof prose>): Block => ({ kind: 'prose', id, prose: text });

const step: Section = {
  id: 'step',
  heading: 'The step',
  level: 2,
  own: 'step',
  blocks: [
    said(
      'step-said',
      prose`
        The beam is ${plateBeamDiameter} wide (1/e² diameter) at the plate. ${beamAgainstStep} The step ratio ${math`\kappa = a/w`} is ${stepRatio}, and ${stopRatioSaid}. ${ratioPlace} ${specialSaid}

        ${phaseSaid} ${orderSaid}

        In the focus every part of the beam arrives on the axis in step with itself. ${whySaid}

        Common practice (no source) sets the 1/e² beam diameter equal to the step diameter and uses a step of half a wave. ${ruleSaid}

        ${sensitivitySaid}
      `,
    ),
    { ...said('no-stop', prose`${stopSaid}`), when: { choice: stop, is: 'open' } },
    ...blocksOf(matching, 'focus-over-ratio', 'sensitivity-table', 'beam-change'),
  ],
};

const plane: Section = {
  id: 'plane',
  heading: 'The plane',
  level: 2,
  own: 'plane',
  blocks: [
    said(
      'plane-said',
      prose`
        The workpiece is at ${workpieceZ} on the z axis, which points away from the lens and begins in its focal plane; that is ${defocus} Rayleigh lengths from the focus, before it where negative. ${profileSaid}

        The unshaped focus has a 1/e² radius of ${focusRadius} and a Rayleigh length of ${rayleighLength} (both for M² = 1). The edge of the beam converges at a sine of ${convergence}; what the paraxial, scalar model leaves out is of the order of ${modelError}.
      `,
    ),
    ...blocksOf(matching, 'profile', 'numbers'),
  ],
};

const fluence: Section = {
  id: 'fluence',
  heading: 'The fluence',
  level: 2,
  own: 'fluence',
  blocks: [
    said(
      'fluence-said',
      prose`
        ${energySaid} ${stopSaid} Fluences are peak values of one pulse, incident, unless they say otherwise: with the plate the peak is ${peakFluence} where the workpiece stands. The threshold is ${thresholdAtN}. ${aboveThresholdSaid}

        ${thresholdSaid}${thresholdDoubtSaid} ${incubationSaid}

        The effective area is the energy over the peak fluence. ${effectiveAreaSaid}
      `,
    ),
    ...blocksOf(
      threshold,
      'conditions',
      'profile-threshold',
      'fluence-table',
      'spot-table-said',
      'spot-rows',
    ),
    ...blocksOf(
      threshold,
      'fit-said',
      'fitted-radius',
      'fitted-plane',
      'fit',
      'residuals',
      'gaussian-instead',
    ),
    ...blocksOf(threshold, 'incubation-fit-said', 'mark-said', 'mark-growth'),
    { ...blockOf(threshold, 'mark-picture-said'), needs: [foundMark] },
    said(
      'volume-gain',
      prose`${removalGainSaid} The comparison holds for single craters, not for trenches, whose pulses overlap.`,
    ),
    said('window-gain', prose`${windowGainSaid} ${todayInWindowSaid}`),
    ...blocksOf(threshold, 'removal-table'),
  ],
};

const spacing: Section = {
  id: 'spacing',
  heading: 'The spacing',
  level: 2,
  own: 'spacing',
  blocks: [
    said(
      'spacing-said',
      prose`
        ${pulsesSaid} ${plainRunsSaid}

        The modulation is the highest less the lowest accumulated fluence over their sum. ${evenSaid} ${noneBelowSaid}

        ${closerLinesSaid}
      `,
    ),
    ...blocksOf(throughput, 'pulses-table', 'uniformity-table', 'modulation-by-spacing'),
  ],
};

const aboutWindow = ['area within the window'];

/** Without what is said of the window of ripples: a design that makes none has no use for it. */
function withoutWindow(block: Block): Block[] {
  if (block.id === 'window-gain') return [];
  if (block.kind !== 'table' || block.id !== 'removal-table') return [block];
  const rows = block.table.rows.filter(([name]) => !(typeof name === 'string' && aboutWindow.includes(name)));
  return [{ ...block, table: { ...block.table, rows } }];
}

/** The reasons of a design that makes no ripples. */
export const reasonsWithoutRipples = (): readonly Section[] =>
  reasonSections.map((section) => ({ ...section, blocks: section.blocks.flatMap(withoutWindow) }));

/** Why the design is as it is: step, plane, fluence and spacing. */
export const reasonSections: readonly Section[] = [step, plane, fluence, spacing];
