import type { Progress } from '../numerics/progress.ts';
import type { Engraved } from './engraving.ts';
import { meanOf } from './engravingCell.ts';
import type { LayerMaps } from './engravingMaps.ts';
import { addGroups, layerGroups } from './floorLayers.ts';
import type { FloorPatch } from './floorMap.ts';

/** The floor of an engraving on a patch, and how rough it is. */
export interface EngravedFloor {
  readonly patch: FloorPatch;
  /** Depth below the fresh surface, m, row by row from the lower edge. */
  readonly depth: Float64Array;
  readonly mean: number;
  /** Root mean square deviation from the mean, m: Sq as in ISO 25178 (memory), over the patch, without filters. */
  readonly rms: number;
  /** Highest less lowest point, m: Sz over the patch, without filters. */
  readonly highestToLowest: number;
  /** Steepest slope between neighbouring points of the patch, as a tangent. */
  readonly slope: number;
}

/** Angles that are added at every point of a patch; of more, at as many fewer points. */
const mostAngles = 720;

/**
 * The floor after the first `layers` layers of an engraving: each layer's cell turned by its angle about the place where
 * all of them have a pulse, and added. Layers at more than 720 angles of their own are seen at fewer points each way, as
 * `patch` of the result says: the steepest slope and highest less lowest point are then seen more coarsely.
 */
export function engravedFloor(
  maps: LayerMaps,
  engraved: Engraved,
  layers: number,
  turn: number,
  patch: FloorPatch,
  report?: Progress,
): EngravedFloor {
  const worked = Math.min(layers, engraved.depth.length - 1);
  const groups = layerGroups(maps, engraved, worked, turn);
  const angles = groups.reduce((sum, { sums }) => sum + sums.length, 0);
  const fewer = Math.sqrt(Math.min(1, mostAngles / Math.max(1, angles)));
  const seen = { ...patch, points: Math.max(2, Math.round(patch.points * fewer)) };
  return measured(seen, addGroups(maps, groups, seen, report));
}

function measured(patch: FloorPatch, depth: Float64Array): EngravedFloor {
  const mean = meanOf(depth);
  let [squares, low, high] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of depth) {
    squares += (value - mean) ** 2;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const rms = Math.sqrt(squares / depth.length);
  return { patch, depth, mean, rms, highestToLowest: high - low, slope: steepest(depth, patch) };
}

function steepest(depth: Float64Array, { points, side }: FloorPatch): number {
  const step = side / (points - 1);
  let most = 0;
  for (let row = 0; row + 1 < points; row++) {
    for (let i = row * points; i + 1 < (row + 1) * points; i++) {
      const [along, across] = [depth[i + 1]! - depth[i]!, depth[i + points]! - depth[i]!];
      most = Math.max(most, along * along + across * across);
    }
  }
  return Math.sqrt(most) / step;
}
