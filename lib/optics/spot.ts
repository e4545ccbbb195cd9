import type { Spot } from './askedSpot.ts';
import { centredSpot } from './centredSpot.ts';
import type { Light } from './light.ts';
import { offAxisSpot } from './offAxisSpot.ts';
import { straightStepSpot } from './straightStepSpot.ts';

/**
 * The spot in the plane z, metres from the focus, for any plate. Throws a Problem where the plane is too far from the
 * focus, for a decentred beam on straight steps, and for an off-centre or elliptical beam of M² > 1 on round zones.
 * Beam and M² as in {@link Light}; M² > 1 blurs the coherent irradiance ({@link file://./coherence.ts}).
 */
export function spotAt(light: Light, z: number): Spot {
  if (light.plate.kind !== 'round') return straightStepSpot(light, light.plate, z);
  const centred = light.decentreX === 0 && light.decentreY === 0 && light.beamAspect === 1;
  return centred ? centredSpot(light, z) : offAxisSpot(light, light.plate, z);
}
