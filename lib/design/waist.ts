import { choice, derived, number, picked } from '../graph/define.ts';
import { causticWaistPosition } from './measuredCaustic.ts';

export const waistDistance = number({
  id: 'expander.waistDistance',
  name: 'distance from the laser’s waist',
  symbol: 'L_\\text{waist}',
  unit: 'm',
  display: 'mm',
  about:
    'From the waist of the raw beam, where it has the raw diameter, to the first lens; negative when the waist lies behind the lens.',
  initial: 0.5,
  range: { min: -20, max: 20 },
});

export const waistSource = choice({
  id: 'expander.waistSource',
  name: 'source of the distance from the waist',
  symbol: '\\text{waist source}',
  about:
    'Whether the distance from the waist to the first lens is typed, or follows from a measured caustic.',
  initial: 'typed',
  options: { typed: 'typed distance', measured: 'from a measured caustic' },
});

export const causticOrigin = number({
  id: 'expander.causticOrigin',
  name: 'place of the first lens on the caustic’s scale',
  symbol: 'z_1',
  unit: 'm',
  display: 'mm',
  about:
    'Where the first lens of the expander stands on the z scale of the measured caustic, which grows along the light.',
  initial: 0,
  range: { min: -20, max: 20 },
});

export const causticWaistDistance = derived({
  id: 'expander.causticWaistDistance',
  name: 'distance from the caustic’s waist',
  symbol: 'L_\\text{caustic}',
  unit: 'm',
  display: 'mm',
  about:
    'From the waist of the measured caustic to the first lens; negative when the waist lies behind the lens.',
  from: { lens: causticOrigin, waist: causticWaistPosition },
  compute: ({ lens, waist }) => lens - waist,
  formula: 'z_1-z_0',
  source: 'definition',
});

export const usedWaistDistance = picked({
  id: 'expander.usedWaistDistance',
  name: 'distance from the waist in use',
  symbol: 'L',
  unit: 'm',
  display: 'mm',
  about:
    'From the waist of the raw beam to the first lens, as the two lenses take it; negative when the waist lies behind the lens.',
  by: waistSource,
  cases: { typed: waistDistance, measured: causticWaistDistance },
  formula: '\\begin{cases} L_\\text{waist} \\\\ L_\\text{caustic} \\end{cases}',
});
