import { derived, number } from '../graph/define.ts';
import { findRoot } from '../numerics/roots.ts';
import { collinsB, planeOfDefocus } from '../optics/light.ts';
import { Problem } from '../problem.ts';
import { plateBeamDiameter } from './expander.ts';
import { defocus, light, workpieceZ } from './focus.ts';
import { distanceMode } from './lens.ts';
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

/** Focal lengths searched for a wish, metres. */
const searched: readonly [number, number] = [1e-3, 50];

export const wantedFocalLength = derived({
  id: 'wish.focalLength',
  name: 'focal length for the wanted width',
  symbol: 'f_\\text{want}',
  unit: 'm',
  display: 'mm',
  about:
    'Focal length that gives the wanted width in the plane at the same number of Rayleigh lengths from the focus, everything else kept.',
  from: { want: wantedWidth, width, light, defocus, z: workpieceZ, mode: distanceMode },
  compute: ({ want, width, light, defocus, z, mode }) => {
    const unitWidth = width / (light.wavelength * collinsB(light, z));
    const widthAt = (f: number) => {
      const other = { ...light, focalLength: f, plateDistance: mode === 'focal' ? f : light.plateDistance };
      return unitWidth * light.wavelength * collinsB(other, planeOfDefocus(other, defocus));
    };
    try {
      return findRoot((f) => widthAt(f) - want, ...searched, 1e-12);
    } catch {
      throw new Problem(
        'absent',
        'No focal length between 1 mm and 50 m gives that width here; change the wanted width or the beam.',
        {
          input: 'wish.spotWidth',
        },
      );
    }
  },
  formula: 'f:\\ d_{0.5}(f,\\zeta)=d_\\text{want}',
  source: 'definition',
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
  source: 'definition',
});
