import { choice, constant, derived, number, picked } from '../graph/define.ts';
import { glassById, nonlinearIndex as keptIndex } from '../materials/glasses.ts';
import { Problem } from '../problem.ts';
import { glass } from './plate.ts';

export const plateThickness = number({
  id: 'plate.thickness',
  name: 'thickness of the plate',
  symbol: 'L',
  unit: 'm',
  display: 'mm',
  about: 'Thickness of the plate that the light passes, the step left out.',
  initial: 5e-3,
  range: { min: 10e-6, max: 0.1 },
  typical: [1e-3, 10e-3],
});

export const nonlinearSource = choice({
  id: 'plate.nonlinearSource',
  name: 'source of the nonlinear index',
  symbol: '\\text{nonlinear source}',
  about: 'Whether the nonlinear index of the plate is taken from the table of glasses or typed.',
  initial: 'handbook',
  options: { handbook: 'table of glasses', typed: 'typed' },
});

export const typedNonlinearIndex = number({
  id: 'plate.typedNonlinearIndex',
  name: 'typed nonlinear index',
  symbol: 'n_{2,\\text{typed}}',
  unit: 'm^2/W',
  about:
    'Growth of the refractive index with irradiance, n = n₀ + n₂I, linear polarisation, at the laser’s wavelength.',
  initial: 3e-20,
  range: { min: 1e-23, max: 1e-16 },
});

export const nonlinearUnit = constant({
  id: 'plate.nonlinearUnit',
  name: 'unit of nonlinear indices',
  symbol: '\\mathrm{m^2/W}',
  unit: 'm^2/W',
  about: 'What the nonlinear indices of the table of glasses are counted in.',
  value: 1,
  source: 'definition',
});

export const handbookNonlinearIndex = derived({
  id: 'plate.handbookNonlinearIndex',
  name: 'nonlinear index from the table',
  symbol: 'n_{2,\\text{table}}',
  unit: 'm^2/W',
  about: 'Nonlinear index of the glass of the plate near 1 µm, where the table of glasses has one.',
  from: { glass, unit: nonlinearUnit },
  compute: ({ glass, unit }) => {
    if (glass !== 'typed') return keptIndex(glass) * unit;
    throw new Problem(
      'absent',
      'A glass of typed index has no nonlinear index in the table; type one, or choose a glass.',
      { input: 'plate.nonlinearSource' },
    );
  },
  formula: 'n_2(\\text{glass})',
  source: 'milam1998',
  sourceFor: ({ glass }) => (glass === 'typed' ? undefined : glassById(glass).nonlinearIndex?.source),
});

export const nonlinearIndex = picked({
  id: 'plate.nonlinearIndex',
  name: 'nonlinear index of the plate',
  symbol: 'n_2',
  unit: 'm^2/W',
  about: 'Growth of the refractive index of the plate with irradiance, n = n₀ + n₂I, in use.',
  by: nonlinearSource,
  cases: { handbook: handbookNonlinearIndex, typed: typedNonlinearIndex },
  formula: '\\begin{cases} n_{2,\\text{table}} \\\\ n_{2,\\text{typed}} \\end{cases}',
});
