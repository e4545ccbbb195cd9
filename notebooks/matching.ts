import { plateBeamDiameter } from '../lib/design/expander.ts';
import { focusRadius, rayleighLength } from '../lib/design/focus.ts';
import { convergence, modelError } from '../lib/design/limits.ts';
import { darkRatio, flattestRatio, stepRatio } from '../lib/design/match.ts';
import { stepDiameter } from '../lib/design/plate.ts';
import { usedBeamDiameter } from '../lib/design/rawBeam.ts';
import {
  dipLessPhase,
  dipMorePhase,
  dipNarrowerBeam,
  dipWiderBeam,
  peakFluenceLessPhase,
  peakFluenceMorePhase,
  peakFluenceNarrowerBeam,
  peakFluenceWiderBeam,
  widthLessPhase,
  widthMorePhase,
  widthNarrowerBeam,
  widthWiderBeam,
} from '../lib/design/sensitivity.ts';
import {
  areaRatio,
  dip,
  edgeWidth,
  energyInHalf,
  flatness,
  kind,
  peakFluence,
  profile,
  relativePeak,
  secondMomentDiameter,
  uniformity,
  width,
} from '../lib/design/spot.ts';
import { unshapedPeakFluence, unshapedWidth } from '../lib/design/unshaped.ts';
import { dipQuestion } from './dipQuestion.ts';
import type { StepwellDocument } from './document.ts';
import { limitBlocks } from './limitSentences.ts';
import {
  amplitudeFigure,
  axisFigure,
  beamChangeFigure,
  phaseChangeFigure,
  profileFigure,
  ratioFigure,
} from './matchingFigures.ts';
import { heightSaid, orderSaid, plateLoadSaid, sensitivitySaid, whySaid } from './matchingReasons.ts';
import {
  beamAgainstStep,
  insideSaid,
  magnificationSaid,
  phaseSaid,
  planesSaid,
  plateOutSaid,
  profileSaid,
  ratioPlace,
  ruleSaid,
  specialSaid,
  stopRatioSaid,
  stopSaid,
} from './matchingSentences.ts';
import { measuredBlocks } from './measuredBeam.ts';
import { causticBlocks } from './measuredCaustic.ts';
import { math, prose, sets, term } from './prose.ts';
import { differenceFigure, plateFigure, wavesFigure } from './twoWavesFigures.ts';
import { wishBlocks } from './wishBlocks.ts';

/** In a cell of the plain beam for what is worked out for the shaped one only. */
const notWorkedOut = '– not worked out';

/** The first document: does the beam match the plate, and what follows. */
export const matching: StepwellDocument = {
  id: 'matching',
  title: 'Matching beam and plate',
  short: 'Matching',
  lead: prose`A plate with a shallow round step turns a ${term('Gaussian beam')} into ${term('flat-topped', 'flat-top')} or ${term('ring-shaped', 'ring')} spots. Which ones depends on two ratios: step to beam, and stop to beam. This page works them out for your beam and says what follows.`,
  result: { quantity: profile, missing: 'This design has no spot.' },
  blocks: [
    ...measuredBlocks,
    ...causticBlocks,
    {
      kind: 'prose',
      id: 'plate-does',
      prose: prose`
        ## What the plate does

        A laser beam is brightest on its axis and fades outward, and a lens makes a small spot of the same shape of it. The plate shifts the light that passes its round **step** against the light around it, by half a wave as a rule. In the focus the two overlap and can cancel in the middle, so that a flat-top or a ring is left; before and behind the focus they combine in other ways. A ${term('stop')}, a round opening at the plate, cuts off the rim of the beam.

        The first picture shows the ${term('fluence')}, energy per area, of the beam where it meets the step; the second that of one pulse on the workpiece, with the plate and without it at the same energy.
      `,
    },
    plateFigure,
    profileFigure,
    {
      kind: 'prose',
      id: 'today',
      prose: prose`
        ## Today’s beam on today’s plate

        The raw beam, as it comes from the laser, is ${usedBeamDiameter} wide, and the ${term('expander')}, a pair of lenses, makes it ${plateBeamDiameter} at the plate. Both are ${term('1/e² diameters', 'diameter')}: twice the distance from the axis at which the irradiance, power per area, has fallen to 13.5 % of that on the axis. ${beamAgainstStep}

        How step and beam compare is told by the ${term('step ratio')} ${math`\kappa = a/w`}, the radius of the step over the 1/e² radius of the beam; the stop ratio ${math`R/w`} is the same of the stop. The step ratio is ${stepRatio}, and ${stopRatioSaid}. ${ratioPlace}

        ${phaseSaid} ${heightSaid} ${stopSaid}

        ${profileSaid}

        ${magnificationSaid}
      `,
    },
    {
      kind: 'caution',
      id: 'plate-out',
      prose: prose`**Before the plate comes out.** ${plateOutSaid}

        **On the way.** ${plateLoadSaid} ${insideSaid} Compare with the damage threshold of each optic (ISO 21254, memory).`,
    },
    ...limitBlocks,
    {
      kind: 'table',
      id: 'numbers',
      table: {
        caption: 'The spot on the workpiece',
        columns: ['', 'with the plate', 'plate taken out'],
        rows: [
          ['kind of profile', kind, notWorkedOut],
          ['width: disc of the area above half the peak', width, unshapedWidth],
          ['peak fluence per pulse, incident', peakFluence, unshapedPeakFluence],
          ['peak against that of a perfect Gaussian without plate and stop', relativePeak, notWorkedOut],
          ['dip on the axis', dip, notWorkedOut],
          ['edge, 90 to 10 % of the peak', edgeWidth, notWorkedOut],
          ['plateau ratio, area above 0.9 over area above 0.5', areaRatio, notWorkedOut],
          ['energy above half the peak, of the transmitted', energyInHalf, notWorkedOut],
          ['flatness, mean over peak above half the peak', flatness, notWorkedOut],
          ['uniformity, standard deviation over mean above half the peak', uniformity, notWorkedOut],
          [
            'second-moment diameter, light beyond three times it left out',
            secondMomentDiameter,
            notWorkedOut,
          ],
        ],
      },
    },
    {
      kind: 'prose',
      id: 'why',
      prose: prose`
        ## Why it works

        In the focus all light that has passed the same glass arrives on the axis in step. The heights of its waves, their **amplitudes**, add up, and the irradiance is the square of the sum. ${whySaid}

        Try ${sets('half a wave', { 'plate.source': 'designed', 'plate.designPhase': Math.PI })}, ${sets('0.4 waves', { 'plate.source': 'designed', 'plate.designPhase': 0.8 * Math.PI })} or ${sets('a full wave', { 'plate.source': 'designed', 'plate.designPhase': 2 * Math.PI })}; the last one is what a plate of half a wave becomes for light of nearly half the wavelength.
      `,
    },
    wavesFigure,
    {
      kind: 'prose',
      id: 'two-waves-said',
      prose: prose`The focus can be told from two waves. That of the whole beam, without a step, is narrow and high; the light through the middle alone comes from a smaller part of the lens and makes a wider, lower one. A step of phase ${math`\varphi`} turns the second wave, which is part of the first, by that phase, and what is left is ${math`U=U_\text{all}-(1-e^{i\varphi})\,U_\text{centre}`}: with half a wave the whole beam less twice its middle.`,
    },
    differenceFigure,
    amplitudeFigure,
    {
      kind: 'prose',
      id: 'ratio',
      prose: prose`
        ## The step ratio decides, and so does the stop

        ${specialSaid}

        Try ${sets('equal diameters', ({ step, raw }: { step: number; raw: number }) => ({ 'expander.kind': 'magnification', 'expander.magnification': step / raw }), { step: stepDiameter, raw: usedBeamDiameter })}, ${sets('the darkest centre', ({ step, raw, dark }: { step: number; raw: number; dark: number }) => ({ 'expander.kind': 'magnification', 'expander.magnification': step / dark / raw }), { step: stepDiameter, raw: usedBeamDiameter, dark: darkRatio })} or ${sets('the flattest focus', ({ step, raw, flat }: { step: number; raw: number; flat: number }) => ({ 'expander.kind': 'magnification', 'expander.magnification': step / flat / raw }), { step: stepDiameter, raw: usedBeamDiameter, flat: flattestRatio })}; or ${sets('take the stop away', { 'plate.stop': 'open' })} and ${sets('put it back', { 'plate.stop': 'round' })}.
      `,
    },
    ratioFigure,
    {
      kind: 'prose',
      id: 'planes',
      prose: prose`
        Without plate and stop the focus would have a 1/e² radius of ${focusRadius}. The **Rayleigh length**, here ${rayleighLength}, is how far from there that beam has grown √2 times as wide; ζ in the next picture counts in it. Both are for **M²** = 1, a perfect Gaussian beam; a real one spreads M² times as fast. ${planesSaid}

        These pages count with small angles to the axis and without polarisation (the paraxial, scalar model). The edge of the beam converges at a sine of ${convergence}; what that leaves out is of the order of ${modelError}.
      `,
    },
    axisFigure,
    dipQuestion,
    {
      kind: 'prose',
      id: 'sensitivity',
      prose: prose`
        ## How well it must be matched

        ${sensitivitySaid}
      `,
    },
    beamChangeFigure,
    phaseChangeFigure,
    {
      kind: 'table',
      id: 'sensitivity-table',
      table: {
        caption: 'The spot at the same z and pulse energy',
        columns: ['', '5 % less', 'today', '5 % more'],
        rows: [
          ['beam diameter at the plate: dip', dipNarrowerBeam, dip, dipWiderBeam],
          [
            'beam diameter at the plate: peak fluence',
            peakFluenceNarrowerBeam,
            peakFluence,
            peakFluenceWiderBeam,
          ],
          ['beam diameter at the plate: width', widthNarrowerBeam, width, widthWiderBeam],
          ['phase of the step: dip', dipLessPhase, dip, dipMorePhase],
          ['phase of the step: peak fluence', peakFluenceLessPhase, peakFluence, peakFluenceMorePhase],
          ['phase of the step: width', widthLessPhase, width, widthMorePhase],
        ],
      },
    },
    {
      kind: 'prose',
      id: 'rule',
      prose: prose`
        ## The rule of thumb

        Common practice (no source) sets the 1/e² beam diameter equal to the step diameter and uses a step of half a wave. ${ruleSaid} An M² a little above 1 blurs the profile: try ${sets('M² = 1', { 'laser.ratioSource': 'typed', 'laser.beamPropagationRatio': 1 })} and ${sets('M² = 1.2', { 'laser.ratioSource': 'typed', 'laser.beamPropagationRatio': 1.2 })}. The model takes M² for partial coherence, light whose parts keep step only in part. Most of the M² of a femtosecond beam is aberration, a wavefront out of shape, which need not blur it so.
      `,
    },
    {
      kind: 'prose',
      id: 'plate-made',
      prose: prose`
        ## The height of the step

        ${orderSaid}
      `,
    },
    ...wishBlocks,
  ],
};
