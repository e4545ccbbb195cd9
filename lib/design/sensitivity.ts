import { constant, derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import type { Light } from '../optics/light.ts';
import { dipOf } from '../optics/profileMetrics.ts';
import { areaAbove, peakOf, type RadialProfile } from '../optics/radialProfile.ts';
import { blurOfPlan } from '../optics/roundProfile.ts';
import { roundFocusAt, roundProfileFromKernel } from '../optics/roundSpot.ts';
import { withBeamScaled, withPhaseScaled } from '../optics/variants.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { profileText } from './shownParts.ts';
import { dip, kernel, peakFluence, width } from './spot.ts';

export const change = constant({
  id: 'sensitivity.change',
  name: 'change tried',
  symbol: '\\delta',
  unit: '1',
  display: '%',
  about: 'Relative change of beam size, or of phase, that the sensitivity is shown for.',
  value: 0.05,
  source: 'common practice',
});

type Vary = (light: Light, factor: number) => Light;

function changedProfile(id: string, name: string, sign: 1 | -1, vary: Vary): Derived<RadialProfile> {
  return derived({
    id,
    name,
    symbol: 'I_\\delta(\\rho)',
    unit: 'none',
    about: `Irradiance against radius at the same z with the ${name.replace('profile with ', '')}; plate, stop and lens unchanged.`,
    from: { light, z: workpieceZ, change, kernel },
    // A 5 % change leaves today's Bessel matrix good to 1e-12; the blur goes with the beam.
    compute: ({ light, z, change, kernel }) => {
      const other = vary(light, 1 + sign * change);
      const { stepRatio, beamPropagationRatio } = roundFocusAt(other, z);
      const blur = blurOfPlan(kernel.plan, stepRatio, beamPropagationRatio);
      return roundProfileFromKernel(other, z, { ...kernel, blur });
    },
    shownAs: (profile) => profileText(profile),
    formula: 'I(\\rho; \\text{one input} \\times (1\\pm\\delta))',
    source: 'collins1970',
  });
}

function changedDip(id: string, name: string, profile: Derived<RadialProfile>): Derived<number> {
  return derived({
    id,
    name,
    symbol: 'D_\\delta',
    unit: '1',
    display: '%',
    digits: 3,
    zeroBelow: dip.zeroBelow!,
    about: `Dip on the axis at the same z, ${name.replace('dip with ', 'with ')}.`,
    from: { profile },
    compute: ({ profile }) => dipOf(profile),
    formula: '1-\\frac{I_\\delta(0)}{I_{\\delta,\\text{max}}}',
    source: 'definition',
  });
}

export const widerBeam = changedProfile(
  'sensitivity.widerBeamProfile',
  'profile with a 5 % wider beam',
  1,
  withBeamScaled,
);
export const narrowerBeam = changedProfile(
  'sensitivity.narrowerBeamProfile',
  'profile with a 5 % narrower beam',
  -1,
  withBeamScaled,
);
export const morePhase = changedProfile(
  'sensitivity.morePhaseProfile',
  'profile with 5 % more phase',
  1,
  withPhaseScaled,
);
export const lessPhase = changedProfile(
  'sensitivity.lessPhaseProfile',
  'profile with 5 % less phase',
  -1,
  withPhaseScaled,
);

export const dipWiderBeam = changedDip('sensitivity.dipWiderBeam', 'dip with a 5 % wider beam', widerBeam);
export const dipNarrowerBeam = changedDip(
  'sensitivity.dipNarrowerBeam',
  'dip with a 5 % narrower beam',
  narrowerBeam,
);
export const dipMorePhase = changedDip('sensitivity.dipMorePhase', 'dip with 5 % more phase', morePhase);
export const dipLessPhase = changedDip('sensitivity.dipLessPhase', 'dip with 5 % less phase', lessPhase);

/** What one of the four changes does: its words, its profile, and whether its beam is wider or narrower (F₀ ∝ w²). */
interface Changed {
  readonly id: string;
  readonly words: string;
  readonly profile: Derived<RadialProfile>;
  readonly beamBy: 1 | 0 | -1;
}

function changedPeakFluence({ id, words, profile, beamBy }: Changed): Derived<number> {
  return derived({
    id: `sensitivity.peakFluence${id}`,
    name: `peak fluence with ${words}`,
    symbol: 'F_\\delta',
    unit: 'J/m^2',
    display: 'J/cm^2',
    about: `Highest fluence per pulse at the same z and pulse energy, with ${words}; incident.`,
    from: { profile, F0: unshapedPeak, change },
    compute: ({ profile, F0, change }) => F0 * (1 + beamBy * change) ** 2 * peakOf(profile).irradiance,
    formula: 'F_0\\,(w_\\delta/w)^2\\,I_{\\delta,\\text{max}}',
    source: 'definition',
  });
}

function changedWidth({ id, words, profile }: Changed): Derived<number> {
  return derived({
    id: `sensitivity.width${id}`,
    name: `spot width with ${words}`,
    symbol: 'd_\\delta',
    unit: 'm',
    display: 'um',
    about: `Diameter of a disc with the area above half the peak at the same z, with ${words}.`,
    from: { profile },
    compute: ({ profile }) => 2 * Math.sqrt(areaAbove(profile, peakOf(profile).irradiance / 2) / Math.PI),
    formula: '2\\sqrt{A_{\\delta,0.5}/\\pi}',
    source: 'definition',
  });
}

const wider: Changed = { id: 'WiderBeam', words: 'a 5 % wider beam', profile: widerBeam, beamBy: 1 };
const narrower: Changed = {
  id: 'NarrowerBeam',
  words: 'a 5 % narrower beam',
  profile: narrowerBeam,
  beamBy: -1,
};
const more: Changed = { id: 'MorePhase', words: '5 % more phase', profile: morePhase, beamBy: 0 };
const less: Changed = { id: 'LessPhase', words: '5 % less phase', profile: lessPhase, beamBy: 0 };

export const peakFluenceWiderBeam = changedPeakFluence(wider);
export const peakFluenceNarrowerBeam = changedPeakFluence(narrower);
export const peakFluenceMorePhase = changedPeakFluence(more);
export const peakFluenceLessPhase = changedPeakFluence(less);
export const widthWiderBeam = changedWidth(wider);
export const widthNarrowerBeam = changedWidth(narrower);
export const widthMorePhase = changedWidth(more);
export const widthLessPhase = changedWidth(less);

/** The larger of the two relative changes of a value, for 5 % more and 5 % less of a cause. */
function largestChange(
  id: string,
  name: string,
  symbol: string,
  today: Derived<number>,
  one: Derived<number>,
  other: Derived<number>,
): Derived<number> {
  return derived({
    id: `sensitivity.${id}`,
    name,
    symbol,
    unit: '1',
    display: '%',
    digits: 2,
    zeroBelow: 5e-5,
    about: `Larger of the two relative changes of the ${today.name} at the same z and pulse energy, ${name.replace(/^.* by /, 'by ')}.`,
    from: { today, one, other },
    compute: ({ today, one, other }) => Math.max(Math.abs(one / today - 1), Math.abs(other / today - 1)),
    formula: '\\max_{\\pm}\\left|x_\\delta/x-1\\right|',
    source: 'definition',
  });
}

export const fluenceChangeBeam = largestChange(
  'fluenceChangeBeam',
  'change of peak fluence by 5 % of beam diameter',
  '\\Delta F_w',
  peakFluence,
  peakFluenceWiderBeam,
  peakFluenceNarrowerBeam,
);
export const fluenceChangePhase = largestChange(
  'fluenceChangePhase',
  'change of peak fluence by 5 % of phase',
  '\\Delta F_\\varphi',
  peakFluence,
  peakFluenceMorePhase,
  peakFluenceLessPhase,
);
export const widthChangeBeam = largestChange(
  'widthChangeBeam',
  'change of width by 5 % of beam diameter',
  '\\Delta d_w',
  width,
  widthWiderBeam,
  widthNarrowerBeam,
);
export const widthChangePhase = largestChange(
  'widthChangePhase',
  'change of width by 5 % of phase',
  '\\Delta d_\\varphi',
  width,
  widthMorePhase,
  widthLessPhase,
);
