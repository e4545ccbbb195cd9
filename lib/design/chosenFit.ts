import { picked } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { MarkFit } from '../process/markFit.ts';
import { fitModel, gaussianFit, planeFit, profileFit } from './fits.ts';

/** What all fits of marks say of the threshold. */
export interface ThresholdFit extends MarkFit {
  readonly thresholdFluence: number;
  /** Energy at the threshold, where the table gives it; not where several planes are fitted together. */
  readonly thresholdEnergy?: number;
  readonly uncertainties: { readonly thresholdFluence: number };
  readonly intervals: { readonly thresholdFluence: readonly [number, number] };
}

export const chosenFit = picked<'gaussian' | 'profile' | 'profileAndPlane', ThresholdFit>({
  id: 'threshold.chosenFit',
  name: 'fit of the marks',
  symbol: '\\text{fit}',
  unit: 'none',
  about: 'The fit of measured spots that is chosen: threshold, interval, residuals and verdict.',
  by: fitModel,
  cases: { gaussian: gaussianFit, profile: profileFit, profileAndPlane: planeFit },
  shownAs: ({ thresholdFluence }) => formatReadable(thresholdFluence, 'J/m^2', 'J/cm^2', 3),
  formula: '\\begin{cases} D^2(\\ln E) \\\\ A(E) \\\\ A(E, z) \\end{cases}',
});
