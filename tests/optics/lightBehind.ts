import type { Light } from '../../lib/optics/light.ts';
import type { Zone } from '../../lib/optics/zones.ts';

/** Light without faults, 10 mm wide (1/e² diameter) at 1030 nm, with the plate one focal length before a 100 mm lens. */
const plain = {
  wavelength: 1.03e-6,
  beamRadius: 5e-3,
  wavefrontCurvature: 0,
  beamPropagationRatio: 1,
  decentreX: 0,
  decentreY: 0,
  beamAspect: 1,
  focalLength: 0.1,
  plateDistance: 0.1,
};

/** That light, changed, behind zones in units of its 1/e² radius. */
export function lightBehind(zones: readonly Zone[], changes: Partial<Light> = {}): Light {
  const { beamRadius = plain.beamRadius } = changes;
  const inMetres = zones.map(({ outer, phase }) => ({ outer: outer * beamRadius, phase }));
  return { ...plain, plate: { kind: 'round', zones: inMetres }, ...changes };
}
