import { type Cut, decentredCut } from '../../lib/optics/decentredCut.ts';
import type { Light } from '../../lib/optics/light.ts';

/** How far the beam misses the middle of the plate in the lesson, to the right, m. */
export const missed = 0.25e-3;

/** The cut through the spot of that beam in the plane z. */
export const missedCut = (light: Light, z: number): Cut => decentredCut(light, z, missed);
