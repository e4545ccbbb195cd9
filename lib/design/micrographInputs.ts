import { number } from '../graph/define.ts';
import { pictureInputs } from './pictureInputs.ts';
import type { PictureNames } from './pictureScale.ts';

/** The letter by which a micrograph is called on the page. */
export type MicrographLetter = 'A' | 'B';

export function micrographNames(prefix: string, letter: MicrographLetter): PictureNames {
  return {
    prefix,
    suffix: ` (${letter})`,
    sought: 'Where the ripples are measured',
    holds: 'the ripples and no edge of the field',
    leastSide: 64,
    pitch: 50e-9,
    usualPitch: [10e-9, 500e-9],
    barLength: 5e-6,
    barEnd: 20,
    side: 256,
    missing: `No micrograph ${letter} has been given yet: choose one.`,
  };
}

/** A micrograph with its scale, its part, and how it lies to the scan. */
export function micrographInputs(names: PictureNames, letter: MicrographLetter) {
  return {
    ...pictureInputs(names, {
      name: `micrograph ${letter}`,
      about:
        'A picture of a rippled surface from above, by electron or light microscope: PNG, TIFF or JPEG, of colours their luminance.',
    }),
    scanAngle: number({
      id: `${names.prefix}.scanAngle`,
      name: `direction of the scan in the picture${names.suffix}`,
      symbol: '\\alpha_\\text{scan}',
      unit: 'rad',
      display: 'deg',
      about:
        'Direction in which the beam was scanned as it lies in the picture, against the picture’s x axis, which points to the right; counter-clockwise. Only you can know how the workpiece lay under the microscope.',
      initial: 0,
      range: { min: -2 * Math.PI, max: 2 * Math.PI },
      typical: [0, Math.PI / 2],
    }),
  };
}

/** One for both pictures: numbers of unlike smoothing cannot be compared. */
export const smoothing = number({
  id: 'micrograph.smoothing',
  name: 'smoothing behind the local orientation',
  symbol: '\\sigma',
  unit: '1',
  display: 'px',
  about:
    'Standard deviation of the Gaussian over which grey values are smoothed before their gradients are taken, in pixels, the same for both micrographs; period and direction do not depend on it. A quarter of the period at most.',
  initial: 2,
  range: { min: 0.5, max: 20 },
  typical: [1, 5],
});
