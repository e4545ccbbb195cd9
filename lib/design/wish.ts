import { constant, derived, number } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { collinsB } from '../optics/light.ts';
import { Problem } from '../problem.ts';
import { plateBeamDiameter } from './expander.ts';
import { defocus, light, workpieceZ } from './focus.ts';
import { distanceMode, focalLength } from './lens.ts';
import { width } from './spot.ts';

export const wantedWidth = number({
  id: 'wish.spotWidth',
  name: 'spot width wanted',
  symbol: 'd_\\text{want}',
  unit: 'm',
  display: 'um',
  about: 'Diameter of a disc with the area above half the peak that the spot should have.',
  initial: 20e-6,
  range: { min: 1e-6, max: 5e-3 },
  typical: [5e-6, 200e-6],
});

export const shortestFocalLength = constant({
  id: 'wish.shortestFocalLength',
  name: 'shortest focal length offered',
  symbol: 'f_\\text{min}',
  unit: 'm',
  display: 'mm',
  about: 'Shortest focal length that the lens may have.',
  value: focalLength.range.min,
  source: 'definition',
});

export const longestFocalLength = constant({
  id: 'wish.longestFocalLength',
  name: 'longest focal length offered',
  symbol: 'f_\\text{max}',
  unit: 'm',
  display: 'mm',
  about: 'Longest focal length that the lens may have.',
  value: focalLength.range.max,
  source: 'definition',
});

export const wantedFocalLength = derived({
  id: 'wish.focalLength',
  name: 'focal length for the wanted width',
  symbol: 'f_\\text{want}',
  unit: 'm',
  display: 'mm',
  about:
    'Focal length that gives the wanted width in the plane at the same number of Rayleigh lengths from the focus, everything else kept.',
  from: {
    want: wantedWidth,
    width,
    light,
    defocus,
    z: workpieceZ,
    mode: distanceMode,
    shortest: shortestFocalLength,
    longest: longestFocalLength,
  },
  compute: ({ want, width, light, defocus, z, mode, shortest, longest }) => {
    const { wavelength, beamRadius, wavefrontCurvature, plateDistance } = light;
    // The width is k·B, k fixed by beam, plate and ζ; B = f in the front focal plane, else B = f/(1 + c(d − f)).
    const k = width / collinsB(light, z);
    const c = (defocus * wavelength) / (Math.PI * beamRadius * beamRadius) + wavefrontCurvature;
    const typed = (want * (1 + c * plateDistance)) / (k + c * want);
    const f = mode === 'focal' ? want / k : typed;
    const behindPlateImage = mode !== 'focal' && !(1 + c * (plateDistance - f) > 0);
    if (f >= shortest && f <= longest && !behindPlateImage) return f;
    const show = (length: number) => formatQuantity(length, 'm', 'mm');
    throw new Problem(
      'absent',
      `No focal length between ${show(shortest)} and ${show(longest)} gives that width here; change the wanted width or the beam.`,
      { input: 'wish.spotWidth' },
    );
  },
  formula: 'f:\\ d_{0.5}(f,\\zeta)=d_\\text{want}',
  source: 'scaling',
});

export const wantedBeamDiameter = derived({
  id: 'wish.beamDiameter',
  name: 'beam diameter for the wanted width',
  symbol: '2w_\\text{want}',
  unit: 'm',
  display: 'mm',
  about:
    '1/e² beam diameter at the plate that gives the wanted width with this lens, step and stop scaled with the beam, at the same number of Rayleigh lengths from the focus.',
  from: { want: wantedWidth, width, beam: plateBeamDiameter },
  compute: ({ want, width, beam }) => (beam * width) / want,
  formula: '2w\\,\\frac{d_{0.5}}{d_\\text{want}}',
  source: 'scaling',
});
