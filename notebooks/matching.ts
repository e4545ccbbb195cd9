import { plateBeamDiameter } from '../lib/design/expander.ts';
import { centreAmplitude, outerAmplitude } from '../lib/design/explain.ts';
import { focusRadius, rayleighLength } from '../lib/design/focus.ts';
import { convergence, modelError } from '../lib/design/limits.ts';
import { darkRatio, flattestRatio, stepRatio } from '../lib/design/match.ts';
import { stepDiameter, stepPhase } from '../lib/design/plate.ts';
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
import { question, type StepwellDocument } from './document.ts';
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
import { math, prose, says, sets } from './prose.ts';
import { differenceFigure, plateFigure, wavesFigure } from './twoWavesFigures.ts';
import { wishBlocks } from './wishBlocks.ts';

const guess = question({
  id: 'guess',
  question: prose`**Guess before you look.** The beam grows by 5 %, everything else stays, and so does the workpiece. What happens to the dip on the axis?`,
  options: ['It gets deeper', 'It stays, to one percentage point', 'It gets shallower'],
  from: { dip, wider: dipWiderBeam },
  answer: ({ dip, wider }) => (Math.abs(wider - dip) <= 0.01 ? 1 : wider > dip ? 0 : 2),
  explanation: prose`Today the dip is ${dip}; with a beam 5 % wider it is ${dipWiderBeam} at the same z, with one 5 % narrower ${dipNarrowerBeam}. ${says(
    { centre: centreAmplitude, outer: outerAmplitude, phase: stepPhase, dip, wider: dipWiderBeam },
    ({ centre, outer, phase, dip, wider }) =>
      wider > dip && centre > outer && Math.cos(phase) < 0
        ? 'A wider beam sends more of its light around the step, which brings the two amplitudes nearer to equal.'
        : 'How the dip moves depends on which of the two amplitudes is larger on the axis here, and on the distance from the focus.',
  )}`,
});

/** In a cell of the plain beam for what is worked out for the shaped one only. */
const notWorkedOut = '– not worked out';

/** The first document: does the beam match the plate, and what follows. */
export const matching: StepwellDocument = {
  id: 'matching',
  title: 'Matching beam and plate',
  short: 'Matching',
  lead: prose`A plate with a shallow round step turns a Gaussian beam into flat-topped or ring-shaped spots. Which ones depends on two ratios: step to beam, and stop to beam. This page works them out for your beam and says what follows.`,
  result: { quantity: profile, missing: 'This design has no spot.' },
  blocks: [
    ...measuredBlocks,
    ...causticBlocks,
    {
      kind: 'prose',
      id: 'today',
      prose: prose`
        ## Today’s beam on today’s plate

        The raw beam is ${usedBeamDiameter} wide (1/e² diameter) and the expander makes it ${plateBeamDiameter} at the plate. ${beamAgainstStep} The step ratio ${math`\kappa = a/w`} is ${stepRatio}, and ${stopRatioSaid}. ${ratioPlace}

        ${phaseSaid} ${heightSaid} ${stopSaid}

        ${profileSaid}

        ${magnificationSaid}
      `,
    },
    profileFigure,
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
          ['peak against the unshaped, unclipped focus of M² = 1', relativePeak, notWorkedOut],
          ['dip on the axis', dip, notWorkedOut],
          ['edge, 90 to 10 % of the peak', edgeWidth, notWorkedOut],
          ['plateau ratio, area above 0.9 over area above 0.5', areaRatio, notWorkedOut],
          ['energy above half the peak, of the transmitted', energyInHalf, notWorkedOut],
          ['flatness, mean over peak above half the peak', flatness, notWorkedOut],
          ['uniformity, rms over mean above half the peak', uniformity, notWorkedOut],
          ['second-moment diameter, in a threefold window', secondMomentDiameter, notWorkedOut],
        ],
      },
    },
    {
      kind: 'prose',
      id: 'why',
      prose: prose`
        ## Why it works

        In the focus every part of the beam arrives on the axis in step with itself. ${whySaid}

        Try ${sets('half a wave', { 'plate.source': 'designed', 'plate.designPhase': Math.PI })}, ${sets('0.4 waves', { 'plate.source': 'designed', 'plate.designPhase': 0.8 * Math.PI })} or ${sets('a full wave', { 'plate.source': 'designed', 'plate.designPhase': 2 * Math.PI })}; the last one is what a plate of half a wave becomes for light of nearly half the wavelength.
      `,
    },
    plateFigure,
    {
      kind: 'prose',
      id: 'two-waves-said',
      prose: prose`The focus is the sum of two waves. That of the whole beam is narrow and high; the light through the middle alone comes from a smaller part of the lens and makes a wider, lower one. A step of phase ${math`\varphi`} turns the second wave by that phase, and what is left is ${math`U=U_\text{all}-(1-e^{i\varphi})\,U_\text{centre}`}: with half a wave the whole beam less twice its middle.`,
    },
    wavesFigure,
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
    axisFigure,
    {
      kind: 'prose',
      id: 'planes',
      prose: prose`The unshaped focus has a 1/e² radius of ${focusRadius} and a Rayleigh length of ${rayleighLength} (both for M² = 1). ${planesSaid} The edge of the beam converges at a sine of ${convergence}; what the paraxial, scalar model leaves out is of the order of ${modelError}.`,
    },
    guess,
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

        Common practice (no source) sets the 1/e² beam diameter equal to the step diameter and uses a step of half a wave. ${ruleSaid} A real beam with M² slightly above 1 is more forgiving in this model: try ${sets('M² = 1', { 'laser.ratioSource': 'typed', 'laser.beamPropagationRatio': 1 })} and ${sets('M² = 1.2', { 'laser.ratioSource': 'typed', 'laser.beamPropagationRatio': 1.2 })}. That holds for a beam whose M² comes from partial coherence; most of the M² of a femtosecond beam is aberration, which need not help.
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
