import { ifThere } from '../graph/define.ts';
import { chosenFit, type ThresholdFit } from './chosenFit.ts';
import { handbookRange } from './material.ts';

export const fitIfThere = ifThere<ThresholdFit | null>({
  id: 'threshold.fitIfThere',
  name: 'fit of the marks, where there is one',
  symbol: '\\text{fit}',
  unit: 'none',
  about: 'The chosen fit of measured spots, or nothing where there is none.',
  of: chosenFit,
});

export const handbookIfThere = ifThere({
  id: 'threshold.handbookIfThere',
  name: 'published thresholds, where there are any',
  symbol: '[F_\\text{low}, F_\\text{high}]',
  unit: { low: 'J/m^2', high: 'J/m^2', start: 'J/m^2', uncertainty: 'J/m^2' },
  about: 'Range of published threshold fluences of this material, or nothing where the handbook has none.',
  of: handbookRange,
});
