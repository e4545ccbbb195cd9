import { choice, derived, picked } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { FitVerdict } from '../process/fitVerdict.ts';
import type { GaussianMarkFit } from '../process/gaussianMarks.ts';
import { fitIncubation } from '../process/incubation.ts';
import type { PlaneMarkFit } from '../process/planeMarks.ts';
import type { ProfileMarkFit } from '../process/profileMarks.ts';
import type { SpotMark } from '../process/spotMark.ts';
import {
  fitPlaneToo,
  fitterWithPlate,
  fitWithoutPlate,
  marksOfFewest,
  thresholdsByPulses,
} from './fitMarks.ts';
import { light } from './focus.ts';
import { opticsTransmission, plateTransmission } from './losses.ts';
import { namingInput } from './namingInput.ts';
import { spotTable, usedMarks } from './spots.ts';

export const fitModel = choice({
  id: 'threshold.fitModel',
  name: 'what the marks are fitted with',
  symbol: '\\text{model}',
  about:
    'The spot that the marks were made with: a Gaussian of unknown radius, without the plate; the profile predicted in the plane of each mark; or that with the plane fitted too.',
  initial: 'profile',
  options: {
    gaussian: 'a Gaussian, without the plate',
    profile: 'the predicted profile',
    profileAndPlane: 'the predicted profile, its plane fitted too',
  },
});

export const fittedMarks = derived({
  id: 'threshold.fittedMarks',
  name: 'marks that are fitted',
  symbol: '(E_i, A_i)_N',
  unit: 'none',
  about: 'Of the marks that count, those of the fewest pulses: a threshold holds for one number of pulses.',
  from: { marks: usedMarks },
  compute: ({ marks }) => marksOfFewest(marks),
  shownAs: (marks) => `${marks.length} ${marks.length === 1 ? 'mark' : 'marks'}`,
  formula: '\\min N',
  source: 'definition',
});

const passing = { optics: opticsTransmission, plate: plateTransmission };

/** The threshold of a fit and what its verdict says. */
function fitText(fit: FitVerdict & { readonly thresholdFluence: number }): string {
  const { thresholdFluence, verdict, doubt } = fit;
  const words = { describes: 'describes the marks', 'too few': 'too few marks to tell' } as const;
  const said = verdict === 'does not describe' ? 'does not describe the marks' : words[verdict];
  const radius =
    verdict === 'describes' && doubt !== undefined ? ', with another radius than the design' : '';
  return `${formatReadable(thresholdFluence, 'J/m^2', 'J/cm^2', 3)}, ${said}${radius}`;
}

/** Why a fit is not to be trusted, or what it found otherwise than the design says; undefined where all agrees. */
export function doubtOf({ verdict, reason, doubt }: FitVerdict): string | undefined {
  if (verdict === 'describes') return doubt;
  return verdict === 'too few' ? reason : `The model does not describe the marks. ${reason}`;
}

/** What marks of several pulses say of the threshold of one. */
function manyPulses(marks: readonly SpotMark[]): string | undefined {
  const pulses = marks[0]?.pulses ?? 1;
  return pulses === 1
    ? undefined
    : `The table has no marks of one pulse: this is the threshold for ${pulses} pulses on a place, and one pulse needs more where they prepare it for one another.`;
}

export const gaussianFit = derived({
  id: 'threshold.gaussianFit',
  name: 'fit of a Gaussian',
  symbol: 'D^2(\\ln E)',
  unit: 'none',
  about:
    'D² against ln E of marks made without the plate: threshold energy, peak fluence and 1/e² radius with standard uncertainties and 95\u202f% intervals, residuals, whether a Gaussian describes the marks, and a doubt where the design gives another radius in their plane.',
  from: { marks: fittedMarks, optics: opticsTransmission, light },
  compute: ({ marks, optics, light }): GaussianMarkFit =>
    namingInput(spotTable.id, () => fitWithoutPlate(marks, { optics, plate: 1 }, light)),
  shownAs: (fit) => fitText(fit),
  formula: 'D^2=2w^2\\ln(E/E_\\text{th})',
  source: 'liu1982',
});

export const profileFit = derived({
  id: 'threshold.profileFit',
  name: 'fit of the predicted profile',
  symbol: 'A(E)',
  unit: 'none',
  about:
    'Marked areas against energy with the profile predicted in the plane of each mark: peak fluence at the threshold with standard uncertainty and 95\u202f% interval, residuals, and whether the profile describes the marks.',
  from: { marks: fittedMarks, light, ...passing },
  compute: ({ marks, light, ...passing }): ProfileMarkFit =>
    namingInput(spotTable.id, () => fitterWithPlate(light, passing)(marks)),
  shownAs: (fit) => fitText(fit),
  formula: 'A(E)=A\\{H/H_\\text{max}>E_\\text{th}/E\\}',
  source: 'garcia2021',
  heavy: 'search',
});

export const planeFit = derived({
  id: 'threshold.planeFit',
  name: 'fit of the predicted profile and its plane',
  symbol: 'A(E, z)',
  unit: 'none',
  about:
    'As the fit of the predicted profile, with one offset to the z of all marks fitted too, up to two Rayleigh lengths; other offsets that fit about as well are its rivals.',
  from: { marks: fittedMarks, light, ...passing },
  compute: ({ marks, light, ...passing }, report): PlaneMarkFit =>
    namingInput(spotTable.id, () => fitPlaneToo(marks, light, passing, report)),
  shownAs: (fit) => fitText(fit),
  formula: 'A\\{F(z+\\Delta z)>F_\\text{th}\\}',
  source: 'garcia2021',
  heavy: 'search',
});

const fluenceShown = { unit: 'J/m^2', display: 'J/cm^2', digits: 3 } as const;

/** Threshold and uncertainty from one of the fits. */
function resultsOf<
  T extends FitVerdict & {
    readonly thresholdFluence: number;
    readonly uncertainties: { readonly thresholdFluence: number };
  },
>(id: string, words: string, fit: Derived<T>) {
  const fluence = derived({
    id: `threshold.${id}Fluence`,
    name: `threshold from ${words}`,
    symbol: `F_\\text{th,${id}}`,
    ...fluenceShown,
    about: `Peak fluence at the threshold as ${words} gives it, incident, for the fewest pulses in the table.`,
    from: { fit, marks: fittedMarks },
    compute: ({ fit }): number => fit.thresholdFluence,
    valid: ({ fit, marks }) => [doubtOf(fit), manyPulses(marks)].filter(Boolean).join(' ') || undefined,
    formula: fit.symbol,
    source: fit.source,
  });
  const uncertainty = derived({
    id: `threshold.${id}Uncertainty`,
    name: `standard uncertainty of the threshold from ${words}`,
    symbol: `u(F_\\text{th,${id}})`,
    ...fluenceShown,
    digits: 2,
    about: `Standard uncertainty (one standard deviation) of the threshold as ${words} gives it, from the scatter of the marks.`,
    from: { fit },
    compute: ({ fit }): number => fit.uncertainties.thresholdFluence,
    formula: fit.symbol,
    source: 'jcgm100',
  });
  return { fluence, uncertainty };
}

const gaussian = resultsOf('gaussian', 'the fit of a Gaussian', gaussianFit);
const profile = resultsOf('profile', 'the fit of the predicted profile', profileFit);
const plane = resultsOf('plane', 'the fit of profile and plane', planeFit);
export const gaussianFluence = gaussian.fluence;
export const gaussianUncertainty = gaussian.uncertainty;
export const profileFluence = profile.fluence;
export const profileUncertainty = profile.uncertainty;
export const planeFluence = plane.fluence;
export const planeUncertainty = plane.uncertainty;

export const fittedFluence = picked({
  id: 'threshold.fittedFluence',
  name: 'fitted threshold fluence',
  symbol: 'F_\\text{th,fit}',
  ...fluenceShown,
  about:
    'Threshold of the chosen fit of measured spots, incident peak fluence, for the fewest pulses in the table.',
  by: fitModel,
  cases: { gaussian: gaussianFluence, profile: profileFluence, profileAndPlane: planeFluence },
  formula:
    '\\begin{cases} F_\\text{th,gaussian} \\\\ F_\\text{th,profile} \\\\ F_\\text{th,plane} \\end{cases}',
});

export const fittedUncertainty = picked({
  id: 'threshold.fittedUncertainty',
  name: 'standard uncertainty of the fitted threshold',
  symbol: 'u(F_\\text{th,fit})',
  ...fluenceShown,
  digits: 2,
  about: 'Standard uncertainty (one standard deviation) of the threshold of the chosen fit.',
  by: fitModel,
  cases: { gaussian: gaussianUncertainty, profile: profileUncertainty, profileAndPlane: planeUncertainty },
  formula:
    '\\begin{cases} u(F_\\text{th,gaussian}) \\\\ u(F_\\text{th,profile}) \\\\ u(F_\\text{th,plane}) \\end{cases}',
});

export const fittedBeamRadius = derived({
  id: 'threshold.fittedBeamRadius',
  name: 'beam radius from the marks',
  symbol: 'w_\\text{fit}',
  unit: 'm',
  display: 'um',
  about:
    '1/e² radius on the workpiece from D² against ln E, for marks made without the plate; √(wx·wy) where elliptical.',
  from: { fit: gaussianFit },
  compute: ({ fit }) => fit.beamRadius,
  valid: ({ fit }) => doubtOf(fit),
  formula: '\\sqrt{\\tfrac12\\,dD^2/d\\ln E}',
  source: 'liu1982',
});

export const fittedOffset = derived({
  id: 'threshold.fittedOffset',
  name: 'offset of the plane from the marks',
  symbol: '\\Delta z',
  unit: 'm',
  display: 'um',
  about: 'To be added to the z of the table to get the plane in which the marks were made, as fitted.',
  from: { fit: planeFit },
  compute: ({ fit }) => fit.planeOffset,
  valid: ({ fit }) => doubtOf(fit),
  formula: '\\Delta z',
  source: 'fit',
});

export const incubationFit = derived({
  id: 'threshold.incubationFit',
  name: 'fit of the incubation',
  symbol: 'F_\\text{th}(N)',
  unit: 'none',
  about:
    'Thresholds of each number of pulses in the table, from a Gaussian or the predicted profile as chosen, and the power law and the law with a floor through them.',
  from: { marks: usedMarks, model: fitModel, light, ...passing },
  compute: ({ marks, model, light, optics, plate }) =>
    namingInput(spotTable.id, () => {
      const points =
        model === 'gaussian'
          ? thresholdsByPulses(marks, (some) => fitWithoutPlate(some, { optics, plate }))
          : thresholdsByPulses(marks, fitterWithPlate(light, { optics, plate }));
      return { points, ...fitIncubation(points, { absolute: true }) };
    }),
  shownAs: ({ better, power, floored }) => {
    const law = better === 'floored' && floored ? floored : power;
    return `S = ${law.exponent.toFixed(3)} ± ${law.uncertainties.exponent.toFixed(3)}`;
  },
  formula: 'F_\\infty+(F_1-F_\\infty)N^{S-1}',
  source: 'diniso2014',
  heavy: 'search',
});
