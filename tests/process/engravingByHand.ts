import { type CuttingLaw, countingLevel, depthOfPulse } from '../../lib/process/cuttingLaw.ts';
import type { LayerPlan } from '../../lib/process/engravingMaps.ts';
import type { EngravingBeam } from '../../lib/process/engravingPlanes.ts';
import type { FloorPatch } from '../../lib/process/floorMap.ts';

/** The floor and the pulses counted at every point of a patch, every pulse of every layer asked for itself. */
export interface FloorByHand {
  readonly depth: Float64Array;
  readonly counted: Float64Array;
}

/**
 * Brute force: no cell, no table, no interpolation; whole numbers of pulses at each place, in their order. Each layer's
 * plane lies at the mean of the patch so far. `reach` in m is how far out pulses are asked.
 */
export function floorByHand(
  beam: EngravingBeam,
  plan: LayerPlan,
  layers: number,
  patch: FloorPatch,
  reach: number,
): FloorByHand {
  const { x, y, side, points } = patch;
  const [depth, counted] = [new Float64Array(points ** 2), new Float64Array(points ** 2)];
  for (let layer = 0; layer < layers; layer++) {
    const mean = depth.reduce((sum, value) => sum + value, 0) / depth.length;
    const spot = beam.spotAt(beam.plane + mean);
    const angle = layer * plan.turn;
    for (let i = 0; i < depth.length; i++) {
      const atX = x - side / 2 + ((i % points) * side) / (points - 1);
      const atY = y - side / 2 + (Math.floor(i / points) * side) / (points - 1);
      for (const fluence of fluencesAt(spot, beam.unit, plan, angle, atX, atY, reach)) {
        if (fluence < countingLevel(plan.law)) continue;
        for (let pulse = 0; pulse < plan.lattice.pulses; pulse++) {
          counted[i]! += 1;
          depth[i]! += depthOfPulse(plan.law as CuttingLaw, fluence, counted[i]!);
        }
      }
    }
  }
  return { depth, counted };
}

/** Fluences of the pulses of one layer at a place, as they fall: line after line. */
function* fluencesAt(
  spot: { irradianceAt(x: number, y: number): number },
  unit: number,
  { lattice: { along, across } }: LayerPlan,
  angle: number,
  x: number,
  y: number,
  reach: number,
) {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [u, v] = [c * x + s * y, c * y - s * x];
  for (let line = Math.ceil((v - reach) / across); line <= (v + reach) / across; line++) {
    for (let i = Math.ceil((u - reach) / along); i <= (u + reach) / along; i++) {
      const [du, dv] = [u - i * along, v - line * across];
      yield unit * spot.irradianceAt(c * du - s * dv, s * du + c * dv);
    }
  }
}
