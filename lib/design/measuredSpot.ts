import { choice, derived, file, number, picked } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { FoldedProfile } from '../measured/foldedProfile.ts';
import { sampledDip } from '../measured/sampledProfile.ts';
import { Problem } from '../problem.ts';
import { foldedWidth, foldProfile } from './comparedProfile.ts';
import { workpieceZ } from './focus.ts';
import { namingInput } from './namingInput.ts';
import type { MeasuredProfile } from './profileFile.ts';

export const measuredProfile = file<MeasuredProfile>({
  id: 'spot.measuredProfile',
  name: 'measured profile of the spot',
  symbol: '\\text{measured}',
  unit: { name: 'none', axis: 'none', position: 'm', fluence: 'J/m^2', counts: '1', image: 'none' },
  about:
    'A profile measured on the workpiece: a table of places and values of light, as in "x (µm); fluence (J/cm²)" or "r (µm); counts", or a camera picture of the spot.',
  shownAs: ({ name, position, image }) =>
    image === null
      ? `${name}, ${position.length} places`
      : `${name}, ${image.width} × ${image.height} pixels`,
});

export const measuredPixelPitch = number({
  id: 'spot.measuredPixelPitch',
  name: 'pixel pitch on the workpiece',
  symbol: 'p_\\text{spot}',
  unit: 'm',
  display: 'um',
  about:
    'For a picture of the spot: distance between neighbouring pixels as they lie on the workpiece, the camera’s pitch divided by the magnification onto it; square pixels.',
  initial: 0.5e-6,
  range: { min: 1e-9, max: 1e-3 },
  typical: [0.1e-6, 5.5e-6],
});

export const measuredPlaneSource = choice({
  id: 'spot.measuredProfilePlane',
  name: 'where the profile was measured',
  symbol: '\\text{plane}',
  about:
    'The plane that a measured profile is compared in: that of the workpiece as it stands, or one typed.',
  initial: 'workpiece',
  options: { workpiece: 'in the plane of the workpiece', typed: 'at a z of its own' },
});

export const measuredProfileZ = number({
  id: 'spot.measuredProfileZ',
  name: 'z of the measured profile',
  symbol: 'z_\\text{typed}',
  unit: 'm',
  display: 'mm',
  about:
    'Where the profile was measured, from the focal plane of the lens, positive behind it; as the workpiece’s z.',
  initial: 0,
  range: { min: -0.1, max: 0.1 },
  typical: [-1e-3, 1e-3],
});

export const measuredPlane = picked<'workpiece' | 'typed', number>({
  id: 'spot.measuredPlane',
  name: 'plane of the measured profile',
  symbol: 'z_\\text{measured}',
  unit: 'm',
  display: 'mm',
  about:
    'Plane in which the measured profile is compared, from the focal plane of the lens, positive behind it.',
  by: measuredPlaneSource,
  cases: { workpiece: workpieceZ, typed: measuredProfileZ },
  formula: 'z \\text{ or } z_\\text{typed}',
});

/** The problem of a comparison without a measured profile. */
export function noProfile(): Problem {
  return new Problem(
    'absent',
    'No measured profile of the spot has been given yet: choose a table or a picture.',
    {
      input: measuredProfile.id,
    },
  );
}

export const measuredShape = derived({
  id: 'spot.measuredShape',
  name: 'measured profile about its middle',
  symbol: 'S(\\rho)',
  unit: 'none',
  about:
    'Mean around the centroid of a picture, background subtracted, or of both sides of a line about its middle, against radius, in the unit of the file.',
  from: { file: measuredProfile, pitch: measuredPixelPitch },
  compute: ({ file, pitch }): FoldedProfile => {
    if (file === null) throw noProfile();
    return namingInput(measuredProfile.id, () => foldProfile(file, pitch));
  },
  shownAs: ({ radius }) => `${radius.length} radii up to ${formatReadable(radius.at(-1)!, 'm', 'um')}`,
  formula: '\\overline{S(\\rho,\\alpha)}^{\\,\\alpha}',
  source: 'definition',
});

/** What tells against a number read from the measured profile. */
function doubtOf({ notes }: FoldedProfile): string | undefined {
  return notes.length === 0 ? undefined : notes.join(' ');
}

export const measuredWidth = derived({
  id: 'spot.measuredWidth',
  name: 'measured spot width',
  symbol: 'd_{S,0.5}',
  unit: 'm',
  display: 'um',
  about: 'Diameter of a disc with the area where the measured profile is above half its peak.',
  from: { shape: measuredShape },
  compute: ({ shape }) => namingInput(measuredProfile.id, () => foldedWidth(shape)),
  valid: ({ shape }) => doubtOf(shape),
  formula: '2\\sqrt{A\\{S>\\tfrac12 S_\\text{max}\\}/\\pi}',
  source: 'definition',
});

export const measuredDip = derived({
  id: 'spot.measuredDip',
  name: 'measured dip on the axis',
  symbol: 'D_S',
  unit: '1',
  display: '%',
  digits: 3,
  zeroBelow: 5e-4,
  about:
    'How far the measured profile on its axis lies below its peak; noise makes a small dip of none, since the highest sample counts as the peak.',
  from: { shape: measuredShape },
  compute: ({ shape }) => sampledDip(shape),
  valid: ({ shape }) => doubtOf(shape),
  formula: '1-\\frac{S(0)}{S_\\text{max}}',
  source: 'definition',
});

export const measuredReach = derived({
  id: 'spot.measuredReach',
  name: 'reach of the measured profile',
  symbol: '\\rho_\\text{end}',
  unit: 'm',
  display: 'um',
  digits: 3,
  about: 'Largest radius at which the whole circle, or both sides of the line, were measured.',
  from: { shape: measuredShape },
  compute: ({ shape }) => shape.radius.at(-1)!,
  formula: '\\max\\rho_i',
  source: 'definition',
});
