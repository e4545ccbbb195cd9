import type { Progress } from '../numerics/progress.ts';
import { type LayerMaps, type LayerPlan, layerMaps, type WeighedLayer } from './engravingMaps.ts';
import type { EngravingBeam } from './engravingPlanes.ts';

/** How far an engraving is followed. */
export interface EngravingGoal {
  /** As many layers at least. */
  readonly layers: number;
  /** And on until the mean depth is so much, m; 0 for no further. */
  readonly depth: number;
  /** But never more layers than this. */
  readonly most: number;
}

/** An engraving layer by layer. */
export interface Engraved {
  /** Mean depth after each layer, m, from 0 for none. */
  readonly depth: Float64Array;
  /** Pulses counted on a place before each layer, over those of the first layer. */
  readonly before: Float64Array;
  /** Why it was followed no further: it is done, nothing is removed any more, there is no spot to work with, or it takes too many layers. */
  readonly end: 'done' | 'nothing' | 'outside' | 'most';
}

/**
 * The mean depth after each layer. Each layer meets a flat floor that lies as deep as the mean of all before it and so
 * further from the focus, and a threshold that has fallen with the pulses counted. It ends early where no pulse counts any
 * more. Depths between planes and layers worked out are interpolated ({@link layerMaps}).
 */
export function engrave(
  beam: EngravingBeam,
  plan: LayerPlan,
  goal: EngravingGoal,
  report?: Progress,
  maps: LayerMaps = layerMaps(beam, plan),
): Engraved {
  const [depths, counted] = [[0], [0]];
  const finish = (end: Engraved['end']): Engraved => {
    return { depth: Float64Array.from(depths), before: Float64Array.from(counted), end };
  };
  for (let layer = 0; ; layer++) {
    const [depth, before] = [depths[layer]!, counted[layer]!];
    if (layer >= goal.layers && depth >= goal.depth) return finish('done');
    if (layer === goal.most) return finish('most');
    if (!maps.covers(depth)) return finish('outside');
    const met = maps.around({ depth, before, angle: layer * plan.turn });
    const [removed, pulses] = [mean(met, 'meanRemoved'), mean(met, 'meanCounted')];
    if (pulses === 0 || removed < stalled * depth) return finish('nothing');
    depths.push(depth + removed);
    counted.push(before + pulses / maps.firstCounted);
    report?.(partDone(layer + 1, depth + removed, goal));
  }
}

/** A layer that removes less than this part of the depth so far is the last: 10 000 of them would not be seen. */
const stalled = 1e-9;

function mean(met: readonly WeighedLayer[], key: 'meanRemoved' | 'meanCounted'): number {
  return met.reduce((sum, { layer, weight }) => sum + weight * layer[key], 0);
}

function partDone(layers: number, depth: number, goal: EngravingGoal): number {
  const toDepth = goal.depth === 0 ? 1 : depth / goal.depth;
  const toLayers = goal.layers === 0 ? 1 : layers / goal.layers;
  return Math.min(1, Math.max(layers / goal.most, Math.min(toDepth, toLayers)));
}

/** Mean depth after so many layers, m: the last there is where the engraving ended before. */
export function depthAfter({ depth }: Engraved, layers: number): number {
  return depth[Math.min(layers, depth.length - 1)]!;
}

/** Layers until a mean depth is reached, interpolated between two; undefined where it is not. */
export function layersUntil({ depth }: Engraved, wanted: number): number | undefined {
  const last = depth.findIndex((value) => value >= wanted);
  if (last <= 0) return last === 0 ? 0 : undefined;
  return last - (depth[last]! - wanted) / (depth[last]! - depth[last - 1]!);
}
