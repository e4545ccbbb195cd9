import { derived } from '../graph/define.ts';
import { blurRadius } from '../optics/coherence.ts';
import { dipOf, kindOfProfile, type ProfileKind } from '../optics/profileMetrics.ts';
import { areaAbove, peakOf, type RadialProfile } from '../optics/radialProfile.ts';
import {
  planRoundProfile,
  prepareRoundProfile,
  type RoundFocus,
  roundProfile,
} from '../optics/roundProfile.ts';
import type { Zone } from '../optics/zones.ts';
import { zonesPerStep } from './explain.ts';
import { usedBeamPropagationRatio } from './rawBeam.ts';
import { dip } from './spot.ts';

/** What a profile is, in two numbers. */
export interface Judged {
  readonly kind: ProfileKind;
  readonly dip: number;
}

/** Distances from the focus that the rule is judged at, in Rayleigh lengths: near the focus, 0.05 apart. */
const judgedDefocus = Array.from({ length: 33 }, (_, i) => (i - 16) * 0.05);

export const equalBeamFamily = derived({
  id: 'rule.family',
  name: 'profiles near the focus with equal diameters',
  symbol: '\\text{family}(\\kappa=1)',
  unit: 'none',
  about:
    'Kind and dip of the profiles within 0.8 Rayleigh lengths of the focus if the beam were as wide as the step, with this plate, stop and M².',
  from: { zonesPerStep, beamPropagationRatio: usedBeamPropagationRatio },
  compute: ({ zonesPerStep, beamPropagationRatio }): readonly (Judged & { readonly defocus: number })[] => {
    const focusAt = (defocus: number): RoundFocus => ({
      zones: JSON.parse(zonesPerStep) as Zone[],
      stepRatio: 1,
      defocus,
      beamPropagationRatio,
    });
    const furthest = focusAt(judgedDefocus[0]!);
    // Dip and plateau need the profile down to half its peak: four focus radii and one blur radius hold that.
    const kernel = prepareRoundProfile(
      furthest,
      planRoundProfile(furthest, 4 + blurRadius(beamPropagationRatio)),
    );
    return judgedDefocus.map((defocus) => ({
      defocus,
      ...judge(roundProfile(focusAt(defocus), kernel)),
    }));
  },
  formula: '\\text{kind}(\\zeta),\\ |\\zeta|\\le 0.8,\\ \\kappa=1',
  source: 'common practice',
});

function judge(profile: RadialProfile): Judged {
  const peak = peakOf(profile);
  const dip = dipOf(profile, peak);
  const ratio = areaAbove(profile, 0.9 * peak.irradiance) / areaAbove(profile, 0.5 * peak.irradiance);
  return { dip, kind: kindOfProfile(dip, ratio) };
}

export const equalBeamDipInFocus = derived({
  id: 'rule.dipInFocus',
  name: 'dip in focus with equal diameters',
  symbol: 'D(\\kappa=1,\\zeta=0)',
  unit: '1',
  display: '%',
  digits: 3,
  zeroBelow: dip.zeroBelow!,
  about: 'Dip on the axis in the focus if the beam were as wide as the step.',
  from: { family: equalBeamFamily },
  compute: ({ family }) => family.find(({ defocus }) => defocus === 0)!.dip,
  formula: '1-I(0)/I_\\text{max}',
  source: 'definition',
});

export const equalBeamKindInFocus = derived({
  id: 'rule.kindInFocus',
  name: 'kind in focus with equal diameters',
  symbol: '\\text{kind}(\\kappa=1,\\zeta=0)',
  unit: 'none',
  about: 'Kind of profile in the focus if the beam were as wide as the step.',
  from: { family: equalBeamFamily },
  compute: ({ family }): ProfileKind => family.find(({ defocus }) => defocus === 0)!.kind,
  formula: '\\text{kind}(D, A_{0.9}/A_{0.5})',
  source: 'definition',
});

export const equalBeamFlatTops = derived({
  id: 'rule.flatTopShare',
  name: 'depth of flat-tops with equal diameters',
  symbol: '\\Delta\\zeta_\\text{flat}',
  unit: '1',
  digits: 2,
  about:
    'Total length, in Rayleigh lengths, of the planes within 0.8 of the focus that are flat-tops if the beam were as wide as the step; searched every 0.05.',
  from: { family: equalBeamFamily },
  compute: ({ family }) => 0.05 * family.filter(({ kind }) => kind === 'flat-top').length,
  formula: '0.05\\,\\#\\{\\zeta: \\text{flat-top}\\}',
  source: 'definition',
});
