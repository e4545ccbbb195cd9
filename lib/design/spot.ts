import { derived } from '../graph/define.ts';
import { convergenceOf, paraxialNote } from '../optics/paraxial.ts';
import {
  clipNumbers,
  dipOf,
  edgeOf,
  kindOfProfile,
  type ProfileKind,
  ringNumbers,
} from '../optics/profileMetrics.ts';
import { areaAbove, peakOf } from '../optics/radialProfile.ts';
import {
  blurOfPlan,
  kernelOfPlan,
  planRoundProfile,
  planText,
  type RoundKernel,
  type RoundPlan,
} from '../optics/roundProfile.ts';
import { roundFocusAt, roundIrradianceAt, roundProfileFromKernel } from '../optics/roundSpot.ts';
import { windowedDiameter } from '../optics/secondMoment.ts';
import { Problem } from '../problem.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { energyAfter } from './losses.ts';
import { stepRatio } from './match.ts';
import { transmission } from './plate.ts';
import { usedBeamPropagationRatio } from './rawBeam.ts';
import { kernelText, profileText } from './shownParts.ts';

export const plan = derived({
  id: 'spot.samplePlan',
  name: 'where the profile is sampled',
  symbol: '\\text{plan}',
  unit: 'none',
  about: 'Panels on the plate and radii in the focus, as text; equal texts share one Bessel matrix.',
  from: { light, z: workpieceZ },
  compute: ({ light, z }) => planText(planRoundProfile(roundFocusAt(light, z))),
  formula: '\\text{plan}(\\text{light}, z)',
  source: 'scaling',
});

const matrix = derived({
  id: 'spot.kernel',
  name: 'Bessel matrix',
  symbol: 'J_0(v s)',
  unit: 'none',
  about:
    'Bessel function at every sample radius and plate node; does not depend on beam size, energy or phase.',
  from: { plan },
  compute: ({ plan }) => {
    return kernelOfPlan(JSON.parse(plan) as RoundPlan);
  },
  shownAs: (kernel) => kernelText(kernel),
  formula: 'J_0(v s),\\ v=2\\pi a\\rho/(\\lambda B)',
  source: 'collins1970',
});

export const kernel = derived({
  id: 'spot.blurredKernel',
  name: 'Bessel matrix with blur',
  symbol: '(J_0, G_{M^2})',
  unit: 'none',
  about: 'The Bessel matrix together with the matrix that blurs the coherent profile where M² is above 1.',
  from: { matrix, ratio: stepRatio, beamPropagationRatio: usedBeamPropagationRatio },
  compute: ({ matrix, ratio, beamPropagationRatio }): RoundKernel => ({
    ...matrix,
    blur: blurOfPlan(matrix.plan, ratio, beamPropagationRatio),
  }),
  shownAs: (kernel) => kernelText(kernel),
  formula: '\\frac{2}{\\pi w_b^2}e^{-2r^2/w_b^2},\\ w_b=w_0\\sqrt{M^4-1}\\,|B|/f',
  source: 'collett1978',
});

export const profile = derived({
  id: 'spot.profile',
  name: 'profile on the workpiece',
  symbol: 'I(\\rho)',
  unit: 'none',
  about:
    'Irradiance against radius on the workpiece, relative to the axis of the unshaped, unclipped, M² = 1 beam in its focus.',
  from: { light, z: workpieceZ, kernel },
  compute: ({ light, z, kernel }) => roundProfileFromKernel(light, z, kernel),
  shownAs: (profile) => profileText(profile),
  formula: '(f/B)^2\\,|U(\\varrho,\\zeta)|^2 \\ast \\text{blur}(M^2)',
  source: 'collins1970',
});

export const peak = derived({
  id: 'spot.peak',
  name: 'highest point of the profile',
  symbol: 'I_\\text{max}',
  unit: { irradiance: '1', radius: 'm' },
  about: 'Highest relative irradiance on the workpiece and the radius where it lies.',
  from: { profile },
  compute: ({ profile }) => peakOf(profile),
  formula: '\\max_\\rho I(\\rho)',
  source: 'definition',
});

export const relativePeak = derived({
  id: 'spot.relativePeak',
  name: 'peak against the unshaped focus',
  symbol: 'I_\\text{max}/I_0',
  unit: '1',
  display: '%',
  about:
    'Highest irradiance on the workpiece relative to the axis of the unshaped, unclipped, M² = 1 beam in its focus.',
  from: { peak },
  compute: ({ peak }) => peak.irradiance,
  formula: 'I_\\text{max}',
  source: 'definition',
});

export const dip = derived({
  id: 'spot.dip',
  name: 'dip on the axis',
  symbol: 'D',
  unit: '1',
  display: '%',
  digits: 3,
  // A twentieth of a per cent is beneath any camera, and beneath what the model leaves out.
  zeroBelow: 5e-4,
  about:
    'How far the axis lies below the peak, 1 − I(0)/I_max: 0 for a profile highest on the axis, 100\u202f% for a dark centre.',
  from: { profile, peak, light },
  compute: ({ profile, peak }) => dipOf(profile, peak),
  // The light is asked for the note alone.
  enteredFor: () => ({ keys: ['profile', 'peak'] }),
  valid: ({ light }) => paraxialNote(convergenceOf(light)),
  formula: '1-\\frac{I(0)}{I_\\text{max}}',
  source: 'definition',
});

export const halfArea = derived({
  id: 'spot.halfArea',
  name: 'area above half the peak',
  symbol: 'A_{0.5}',
  unit: 'm^2',
  display: 'um^2',
  about: 'Area on the workpiece where the fluence is above half its peak, over the whole plane.',
  from: { profile, peak },
  compute: ({ profile, peak }) => areaAbove(profile, 0.5 * peak.irradiance),
  formula: 'A\\{I>\\tfrac12 I_\\text{max}\\}',
  source: 'iso13694',
});

export const width = derived({
  id: 'spot.width',
  name: 'spot width',
  symbol: 'd_{0.5}',
  unit: 'm',
  display: 'um',
  about: 'Diameter of a disc with the area where the fluence is above half its peak.',
  from: { area: halfArea, light },
  compute: ({ area }) => 2 * Math.sqrt(area / Math.PI),
  enteredFor: () => ({ keys: ['area'] }),
  valid: ({ light }) => paraxialNote(convergenceOf(light)),
  formula: '2\\sqrt{A_{0.5}/\\pi}',
  source: 'definition',
});

export const edgeWidth = derived({
  id: 'spot.edgeWidth',
  name: 'edge width',
  symbol: 'e',
  unit: 'm',
  display: 'um',
  about: 'From the outermost radius at 90\u202f% of the peak to the first radius beyond it at 10\u202f%.',
  from: { profile, peak },
  compute: ({ profile, peak }) => {
    const edge = edgeOf(profile, peak);
    if (edge) return edge.width;
    throw new Problem(
      'outside',
      'The spot does not fall to a tenth of its peak within the radii computed; move the workpiece nearer to the focus.',
      {
        input: 'workpiece.z',
      },
    );
  },
  formula: '\\rho_{10\\,\\%}-\\rho_{90\\,\\%}',
  source: 'definition',
});

export const areaRatio = derived({
  id: 'spot.areaRatio',
  name: 'plateau ratio',
  symbol: 'A_{0.9}/A_{0.5}',
  unit: '1',
  digits: 3,
  about:
    'Area above 90\u202f% of the peak over the area above half of it: 0.152 for a Gaussian, 1 for a disc.',
  from: { profile, peak, area: halfArea },
  compute: ({ profile, peak, area }) => areaAbove(profile, 0.9 * peak.irradiance) / area,
  formula: '\\frac{A_{0.9}}{A_{0.5}}',
  source: 'iso13694',
});

export const kind = derived({
  id: 'spot.kind',
  name: 'kind of profile',
  symbol: '\\text{kind}',
  unit: 'none',
  about:
    'Flat-top (dip below 5\u202f% and plateau ratio above 0.30), shallow ring (dip 5–10\u202f%), ring (above 10\u202f%), or peaked.',
  from: { dip, ratio: areaRatio },
  compute: ({ dip, ratio }): ProfileKind => kindOfProfile(dip, ratio),
  formula: '\\text{kind}(D, A_{0.9}/A_{0.5})',
  source: 'definition',
});

export const clips = derived({
  id: 'spot.clips',
  name: 'numbers above half the peak',
  symbol: '\\eta=0.5',
  unit: { clip: '1', area: 'm^2', mean: '1', energy: 'm^2', flatness: '1', uniformity: '1' },
  about: 'Area, mean, energy, flatness and uniformity of the part above half the peak (ISO 13694 style).',
  from: { profile, peak },
  compute: ({ profile, peak }) => clipNumbers(profile, peak, 0.5),
  formula: 'H>\\tfrac12 H_\\text{max}',
  source: 'iso13694',
});

export const flatness = derived({
  id: 'spot.flatness',
  name: 'flatness',
  symbol: 'F_{0.5}',
  unit: '1',
  digits: 3,
  about: 'Mean over peak where the fluence is above half its peak: 0.72 for a Gaussian, 1 for a disc.',
  from: { clips },
  compute: ({ clips }) => clips.flatness,
  formula: '\\bar H_{0.5}/H_\\text{max}',
  source: 'iso13694',
});

export const uniformity = derived({
  id: 'spot.uniformity',
  name: 'beam uniformity',
  symbol: 'U_{0.5}',
  unit: '1',
  digits: 3,
  about: 'Root-mean-square deviation over mean where the fluence is above half its peak; 0 is even.',
  from: { clips },
  compute: ({ clips }) => clips.uniformity,
  formula: '\\tfrac{1}{\\bar H}\\sqrt{\\overline{(H-\\bar H)^2}}',
  source: 'iso13694',
});

export const energyInHalf = derived({
  id: 'spot.energyInHalf',
  name: 'energy above half the peak',
  symbol: 'f_{0.5}',
  unit: '1',
  display: '%',
  digits: 3,
  about: 'Energy where the fluence is above half its peak, as a part of the energy that passes the stop.',
  from: { clips, energyAfter, unshapedPeak, transmission },
  compute: ({ clips, energyAfter, unshapedPeak, transmission }) =>
    (clips.energy * unshapedPeak) / (energyAfter * transmission),
  formula: "\\frac{F_0\\int_{A_{0.5}} I\\,dA}{E'\\,T}",
  source: 'iso13694',
});

export const ring = derived({
  id: 'spot.ring',
  name: 'crest of the profile',
  symbol: '\\text{crest}',
  unit: { radius: 'm', width: 'm', energy: 'm^2' },
  about: 'Radius of the crest, its width at half maximum and the relative irradiance integrated over it.',
  from: { profile, peak },
  compute: ({ profile, peak }) => ringNumbers(profile, peak),
  formula: '\\rho_\\text{max},\\ \\Delta\\rho_{0.5}',
  source: 'definition',
});

export const ringDiameter = derived({
  id: 'spot.ringDiameter',
  name: 'crest diameter',
  symbol: '2\\rho_\\text{max}',
  unit: 'm',
  display: 'um',
  about: 'Diameter of the circle on which the fluence is highest; 0 where it is highest on the axis.',
  from: { ring },
  compute: ({ ring }) => 2 * ring.radius,
  formula: '2\\rho_\\text{max}',
  source: 'definition',
});

export const peakFluence = derived({
  id: 'spot.peakFluence',
  name: 'peak fluence',
  symbol: 'F_\\text{peak}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about: 'Highest fluence on the workpiece, per pulse, incident, behind the losses on the way and the stop.',
  from: { F0: unshapedPeak, peak, light },
  compute: ({ F0, peak }) => F0 * peak.irradiance,
  enteredFor: () => ({ keys: ['F0', 'peak'] }),
  valid: ({ light }) => paraxialNote(convergenceOf(light)),
  formula: 'F_0\\,I_\\text{max}',
  source: 'definition',
});

export const secondMomentDiameter = derived({
  id: 'spot.secondMomentDiameter',
  name: 'second-moment diameter',
  symbol: 'd_{4\\sigma}',
  unit: 'm',
  display: 'um',
  about:
    'Second-moment diameter within a window of three times itself, by iteration; without the window it would diverge, since hard edges send a tail.',
  from: { profile, light, z: workpieceZ },
  compute: ({ profile, light, z }) =>
    windowedDiameter(profile, (radii) => roundIrradianceAt(light, z, radii)),
  formula: '2\\sqrt{2}\\sqrt{\\frac{\\int I\\rho^3d\\rho}{\\int I\\rho\\,d\\rho}}',
  source: 'iso11146',
});
