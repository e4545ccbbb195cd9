import { choice, derived, number, picked } from '../graph/define.ts';

export const focalLength = number({
  id: 'lens.focalLength',
  name: 'focal length',
  symbol: 'f',
  unit: 'm',
  display: 'mm',
  about: 'Focal length of the lens, or scan lens, that focuses onto the workpiece.',
  initial: 100e-3,
  range: { min: 5e-3, max: 2 },
  typical: [50e-3, 300e-3],
});

export const distanceMode = choice({
  id: 'lens.distanceMode',
  name: 'distance from plate to lens',
  symbol: '\\text{mode}_d',
  about:
    'Whether the plate stands one focal length before the lens, where the two sides of the focus are alike, or at a typed distance.',
  initial: 'focal',
  options: { focal: 'one focal length', typed: 'typed distance' },
});

export const typedPlateDistance = number({
  id: 'lens.typedPlateDistance',
  name: 'typed distance from plate to lens',
  symbol: 'd_\\text{typed}',
  unit: 'm',
  display: 'mm',
  about: 'From the plate to the lens, where it is typed.',
  initial: 100e-3,
  range: { min: 0, max: 10 },
  typical: [0, 500e-3],
});

const sameAsFocal = derived({
  id: 'lens.focalDistance',
  name: 'one focal length',
  symbol: 'f',
  unit: 'm',
  display: 'mm',
  about: 'The distance at which the plate stands in the front focal plane of the lens.',
  from: { f: focalLength },
  compute: ({ f }) => f,
  formula: 'f',
  source: 'definition',
});

export const plateDistance = picked({
  id: 'lens.plateDistance',
  name: 'distance from plate to lens',
  symbol: 'd',
  unit: 'm',
  display: 'mm',
  about: 'From the plate to the lens; setting it makes the distance a typed one.',
  by: distanceMode,
  cases: { focal: sameAsFocal, typed: typedPlateDistance },
  formula: '\\begin{cases} f \\\\ d_\\text{typed} \\end{cases}',
  assigns: (value) => ({ 'lens.distanceMode': 'typed', 'lens.typedPlateDistance': value }),
});
