import { derived, number } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import {
  defocusAt,
  type Light,
  rayleighLength as lengthOf,
  planeOfDefocus,
  focusRadius as radiusOf,
} from '../optics/light.ts';
import { findZeroCurvaturePlanes } from '../optics/onAxis.ts';
import { paraxialNote } from '../optics/paraxial.ts';
import { shownDepth, shownPlaces } from './alongBeam.ts';
import { plateBeamDiameter, wavefrontCurvature } from './expander.ts';
import { wavelength } from './laser.ts';
import { focalLength, plateDistance } from './lens.ts';
import { energyAfter } from './losses.ts';
import { zones } from './plate.ts';
import { usedBeamPropagationRatio } from './rawBeam.ts';

export const workpieceZ = number({
  id: 'workpiece.z',
  name: 'position of the workpiece',
  symbol: 'z',
  unit: 'm',
  display: 'mm',
  about:
    'Distance of the workpiece surface from the focal plane of the lens, positive behind it (away from the lens).',
  initial: 0,
  range: { min: -0.1, max: 0.1 },
  typical: [-1e-3, 1e-3],
});

const beam = { wavelength, beam: plateBeamDiameter, f: focalLength };

export const focusRadius = derived({
  id: 'focus.radius',
  name: 'focus radius of the unshaped beam',
  symbol: 'w_0',
  unit: 'm',
  display: 'um',
  about: '1/e² radius of the unshaped beam in its focus, for M² = 1; never contains M².',
  from: beam,
  compute: ({ wavelength, beam, f }) => radiusOf({ wavelength, beamRadius: beam / 2, focalLength: f }),
  valid: ({ beam, f }) => paraxialNote(beam / 2 / f),
  formula: '\\frac{\\lambda f}{\\pi w}',
  source: 'kogelnik1966',
});

export const rayleighLength = derived({
  id: 'focus.rayleighLength',
  name: 'Rayleigh length of the unshaped beam',
  symbol: 'z_R',
  unit: 'm',
  display: 'um',
  about: 'Distance from the focus at which the unshaped beam is √2 wider, for M² = 1; never contains M².',
  from: beam,
  compute: ({ wavelength, beam, f }) => lengthOf({ wavelength, beamRadius: beam / 2, focalLength: f }),
  valid: ({ beam, f }) => paraxialNote(beam / 2 / f),
  shownAs: (length) => shownDepth(length, 4),
  formula: '\\frac{\\pi w_0^2}{\\lambda}',
  source: 'kogelnik1966',
});

export const unshapedPeak = derived({
  id: 'focus.unshapedPeakFluence',
  name: 'peak fluence of the unshaped beam',
  symbol: 'F_0',
  unit: 'J/m^2',
  display: 'J/cm^2',
  about:
    'Fluence per pulse on the axis of the unshaped, unclipped beam in its focus for M² = 1, incident, behind the losses on the way; the unit of the relative irradiance.',
  from: { E: energyAfter, w0: focusRadius },
  compute: ({ E, w0 }) => (2 * E) / (Math.PI * w0 * w0),
  formula: "\\frac{2E'}{\\pi w_0^2}",
  source: 'integration',
});

export const light = derived({
  id: 'focus.light',
  name: 'light',
  symbol: '\\text{light}',
  unit: 'none',
  about: 'Beam, plate and lens together: all that determines the field near the focus.',
  from: {
    wavelength,
    beam: plateBeamDiameter,
    wavefrontCurvature,
    beamPropagationRatio: usedBeamPropagationRatio,
    zones,
    focalLength,
    plateDistance,
  },
  // Field by field: an object with the rest of another is slow to make and slow to read.
  compute: ({
    wavelength,
    beam,
    wavefrontCurvature,
    beamPropagationRatio,
    zones,
    focalLength,
    plateDistance,
  }): Light => ({
    wavelength,
    wavefrontCurvature,
    beamPropagationRatio,
    focalLength,
    plateDistance,
    beamRadius: beam / 2,
    decentreX: 0,
    decentreY: 0,
    beamAspect: 1,
    plate: { kind: 'round', zones },
  }),
  shownAs: ({ wavelength, beamRadius, focalLength }) =>
    `${formatReadable(wavelength, 'm', 'nm')}, beam of ${formatReadable(2 * beamRadius, 'm', 'mm')}, lens of ${formatReadable(focalLength, 'm', 'mm')}`,
  formula: '(\\lambda, w, R_b, M^2, \\text{zones}, f, d)',
  source: 'collins1970',
});

export const defocus = derived({
  id: 'focus.defocus',
  name: 'defocus in Rayleigh lengths',
  symbol: '\\zeta',
  unit: '1',
  about:
    'Distance of the workpiece from the focus in Rayleigh lengths of the unshaped beam, wavefront curvature at the plate included.',
  from: { light, z: workpieceZ },
  compute: ({ light, z }) => defocusAt(light, z),
  formula: '\\frac{\\pi w^2 z}{\\lambda f B}-\\frac{\\pi w^2}{\\lambda R_b},\\quad B=f+z-\\frac{dz}{f}',
  source: 'collins1970',
});

/** Zones in units of the 1/e² beam radius. */
export function zonesInBeamRadii(light: Light) {
  const plate = light.plate;
  if (plate.kind !== 'round') throw new Error('round plates only');
  return plate.zones.map((zone) => ({ outer: zone.outer / light.beamRadius, phase: zone.phase }));
}

/** |ζ| up to which zero-curvature planes are listed. */
export const searchedDefocus = 7;

export const zeroCurvaturePlanes = derived({
  id: 'focus.zeroCurvaturePlanes',
  name: 'zero-curvature planes',
  symbol: 'z_i',
  unit: 'm',
  display: 'mm',
  about:
    'Positions z within seven Rayleigh lengths of the focus where the coherent irradiance has no curvature on the axis; not yet flat-tops.',
  from: { light },
  compute: ({ light }): readonly number[] =>
    findZeroCurvaturePlanes(zonesInBeamRadii(light), searchedDefocus).map((zeta) =>
      planeOfDefocus(light, zeta),
    ),
  shownAs: (places) => (places.length === 0 ? 'none' : shownPlaces(places).join(', ')),
  formula: '\\mathrm{Re}(U_0^* U_2)=0,\\ |\\zeta|\\le 7',
  source: 'search',
});
