import { derived } from '../graph/define.ts';
import { planeOfDefocus } from '../optics/light.ts';
import { areaAbove, peakOf } from '../optics/radialProfile.ts';
import { roundProfileAt, roundProfileFromKernel } from '../optics/roundSpot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { plateTransmission } from './losses.ts';
import { profileText } from './shownParts.ts';
import { kernel } from './spot.ts';

export const fluenceWithoutPlate = derived({
  id: 'unshaped.focus.peakFluence',
  name: 'peak fluence of the unshaped beam without the plate',
  symbol: 'F_\\text{u,0}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Fluence per pulse on the axis of the unshaped, unclipped beam in its focus for M² = 1, with the plate taken out and its losses with it.',
  from: { F0: unshapedPeak, transmission: plateTransmission },
  compute: ({ F0, transmission }) => F0 / transmission,
  formula: 'F_0/T_\\text{plate}',
  source: 'definition',
});

export const unshapedProfile = derived({
  id: 'unshaped.spot.profile',
  name: 'profile without the step',
  symbol: 'I_\\text{u}(\\rho)',
  unit: 'none',
  about: 'Irradiance against radius on the workpiece with the plate taken out and the stop left in.',
  from: { light, z: workpieceZ, kernel },
  compute: ({ light, z, kernel }) => roundProfileFromKernel(withPhaseScaled(light, 0), z, kernel),
  shownAs: (profile) => profileText(profile),
  formula: '(f/B)^2\\,|U(\\varrho,\\zeta)|^2,\\ \\varphi=0',
  source: 'collins1970',
});

export const unshapedSpotPeak = derived({
  id: 'unshaped.spot.peak',
  name: 'highest point without the step',
  symbol: 'I_\\text{u,max}',
  unit: { irradiance: '1', radius: 'm' },
  about:
    'Highest relative irradiance on the workpiece with the plate taken out, and the radius where it lies.',
  from: { profile: unshapedProfile },
  compute: ({ profile }) => peakOf(profile),
  formula: '\\max_\\rho I_\\text{u}(\\rho)',
  source: 'definition',
});

export const unshapedPeakFluence = derived({
  id: 'unshaped.spot.peakFluence',
  name: 'peak fluence without the step',
  symbol: 'F_\\text{u,peak}',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Highest fluence per pulse on the workpiece with the plate taken out, and its losses with it; stop left in, same energy and plane.',
  from: { F0: fluenceWithoutPlate, peak: unshapedSpotPeak },
  compute: ({ F0, peak }) => F0 * peak.irradiance,
  formula: 'F_\\text{u,0}\\,I_\\text{u,max}',
  source: 'definition',
});

export const unshapedWidth = derived({
  id: 'unshaped.spot.width',
  name: 'spot width without the step',
  symbol: 'd_{\\text{u},0.5}',
  unit: 'm',
  display: 'um',
  about: 'Diameter of a disc with the area above half the peak, with the plate taken out.',
  from: { profile: unshapedProfile, peak: unshapedSpotPeak },
  compute: ({ profile, peak }) => 2 * Math.sqrt(areaAbove(profile, peak.irradiance / 2) / Math.PI),
  formula: '2\\sqrt{A_{\\text{u},0.5}/\\pi}',
  source: 'definition',
});

export const unshapedFocusWidth = derived({
  id: 'unshaped.focus.width',
  name: 'width of the focus without the step',
  symbol: 'd_\\text{u,focus}',
  unit: 'm',
  display: 'um',
  about:
    'Diameter of a disc with the area above half the peak, in the focus of the beam with the plate taken out; M² counted, stop left in.',
  from: { light },
  compute: ({ light }) => {
    const plain = withPhaseScaled(light, 0);
    const profile = roundProfileAt(plain, planeOfDefocus(plain, 0));
    return 2 * Math.sqrt(areaAbove(profile, peakOf(profile).irradiance / 2) / Math.PI);
  },
  formula: '2\\sqrt{A_{\\text{u},0.5}/\\pi},\\ \\zeta=0',
  source: 'definition',
});
