import { constant, derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import type { Light } from '../optics/light.ts';
import { dipOf } from '../optics/profileMetrics.ts';
import type { RadialProfile } from '../optics/radialProfile.ts';
import { blurOfPlan } from '../optics/roundProfile.ts';
import { roundFocusAt, roundProfileFromKernel } from '../optics/roundSpot.ts';
import { withBeamScaled, withPhaseScaled } from '../optics/variants.ts';
import { light, workpieceZ } from './focus.ts';
import { kernel } from './spot.ts';

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
    about: `Dip on the axis at the same z, ${name.replace('dip with ', 'with ')}.`,
    from: { profile },
    compute: ({ profile }) => dipOf(profile),
    formula: '1-\\frac{I_\\delta(0)}{I_{\\delta,\\text{max}}}',
    source: 'definition',
  });
}

export const widerBeam = changedProfile(
  'sensitivity.widerBeamProfile',
  'profile with a 5\u202f% wider beam',
  1,
  withBeamScaled,
);
export const narrowerBeam = changedProfile(
  'sensitivity.narrowerBeamProfile',
  'profile with a 5\u202f% narrower beam',
  -1,
  withBeamScaled,
);
export const morePhase = changedProfile(
  'sensitivity.morePhaseProfile',
  'profile with 5\u202f% more phase',
  1,
  withPhaseScaled,
);
export const lessPhase = changedProfile(
  'sensitivity.lessPhaseProfile',
  'profile with 5\u202f% less phase',
  -1,
  withPhaseScaled,
);

export const dipWiderBeam = changedDip(
  'sensitivity.dipWiderBeam',
  'dip with a 5\u202f% wider beam',
  widerBeam,
);
export const dipNarrowerBeam = changedDip(
  'sensitivity.dipNarrowerBeam',
  'dip with a 5\u202f% narrower beam',
  narrowerBeam,
);
export const dipMorePhase = changedDip('sensitivity.dipMorePhase', 'dip with 5\u202f% more phase', morePhase);
export const dipLessPhase = changedDip('sensitivity.dipLessPhase', 'dip with 5\u202f% less phase', lessPhase);
