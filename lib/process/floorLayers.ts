import type { Progress } from '../numerics/progress.ts';
import type { Engraved } from './engraving.ts';
import { type CellGrid, meanOf } from './engravingCell.ts';
import { type LayerMaps, placeInNodes } from './engravingMaps.ts';
import { cellReader, type FloorPatch } from './floorMap.ts';

/** Layers one by one until so many are done; then as many together as are this part of those before. */
const [single, panelPart] = [24, 0.25];
/** Layers at as many angles of their own are added; of more, the roughness grows as that of layers placed at random. */
const mostAngles = 720;
/** Angles that differ by less, rad, are one: at a centimetre a nanometre. */
const sameAngle = 1e-7;

/** Layers of one angle among those taken together. */
interface AngleSum {
  readonly angle: number;
  /** Planes worked out, with the number of layers that each stands for. */
  readonly planes: Map<string, number>;
}

/** Depth of a floor at the points of a patch, and the layers that went into it. */
export interface AddedLayers {
  readonly depth: Float64Array;
  readonly layers: number;
}

/**
 * The first `layers` layers added up on a patch. Each place counts its own pulses, and each layer removes there what it
 * removes after as many; of layers taken together, after as many as come in their middle.
 */
export function addLayers(
  maps: LayerMaps,
  { depth, before }: Pick<Engraved, 'depth' | 'before'>,
  layers: number,
  turn: number,
  steady: boolean,
  patch: FloorPatch,
  report?: Progress,
): AddedLayers {
  const floor = new Float64Array(patch.points ** 2);
  const counted = new Float64Array(steady ? 0 : floor.length);
  let [met, angles] = [0, 0];
  while (met < layers && angles < mostAngles) {
    const together = steady ? layers : met < single ? 1 : Math.floor(panelPart * met);
    const end = Math.min(layers, met + together);
    const taken = byAngle(maps, depth, met, end, turn, mostAngles - angles);
    const middle = (before[met]! + before[taken.end - 1]!) / 2;
    const ahead = before[met] === 0 ? 1 : middle / before[met]!;
    const start = counted.slice();
    for (const sum of taken.sums) {
      addAngle(floor, counted, start, ahead, maps, sum, patch);
      report?.(Math.min(1, ++angles / Math.min(layers, mostAngles)));
    }
    met = taken.end;
  }
  return { depth: floor, layers: met };
}

/** Layers from `start` up to `end` by their angles, up to the first that would be one angle too many. */
function byAngle(
  maps: LayerMaps,
  depth: Float64Array,
  start: number,
  end: number,
  turn: number,
  most: number,
) {
  const sums = new Map<number, AngleSum>();
  let layer = start;
  for (; layer < end; layer++) {
    const angle = (layer * turn) % (2 * Math.PI);
    const key = Math.round(angle / sameAngle);
    if (!sums.has(key) && sums.size === most) break;
    const sum = sums.get(key) ?? { angle, planes: new Map() };
    sums.set(key, sum);
    for (const { plane, weight } of maps.planesAt(depth[layer]!, angle))
      sum.planes.set(plane, (sum.planes.get(plane) ?? 0) + weight);
  }
  return { sums: [...sums.values()], end: layer };
}

/** Adds the layers of one angle to every point; `start` times `ahead` is what a point has counted when they come. */
function addAngle(
  floor: Float64Array,
  counted: Float64Array,
  start: Float64Array,
  ahead: number,
  maps: LayerMaps,
  { angle, planes }: AngleSum,
  patch: FloorPatch,
): void {
  const reader = cellReader(patch, maps.grid, angle);
  const cells: Float64Array[] = [];
  const cellOf = (node: number) => {
    cells[node] ??= summed(maps.grid, planes, (plane) => maps.layer(plane, node).removed);
    return cells[node]!;
  };
  if (counted.length === 0) {
    const removed = cellOf(0);
    for (let i = 0; i < floor.length; i++) {
      reader.goTo(i);
      floor[i]! += reader.read(removed);
    }
    return;
  }
  const pulses = summed(maps.grid, planes, (plane) => maps.layer(plane, 0).counted);
  for (let i = 0; i < floor.length; i++) {
    reader.goTo(i);
    const [node, part] = placeInNodes((start[i]! * ahead) / maps.firstCounted);
    const low = reader.read(cellOf(node));
    floor[i]! += part === 0 ? low : low + part * (reader.read(cellOf(node + 1)) - low);
    counted[i]! += reader.read(pulses);
  }
}

function summed(
  { columns, rows }: CellGrid,
  planes: ReadonlyMap<string, number>,
  valuesOf: (plane: string) => Float64Array,
): Float64Array {
  const sum = new Float64Array(columns * rows);
  for (const [plane, weight] of planes) {
    const values = valuesOf(plane);
    for (let i = 0; i < sum.length; i++) sum[i]! += weight * values[i]!;
  }
  return sum;
}

/** Many layers for fewer: the depth that all of them reach, and deviations that grow with the root of their number. */
export function grown(floor: Float64Array, times: number, mean: number): Float64Array {
  const middle = meanOf(floor);
  return floor.map((value) => mean + (value - middle) * Math.sqrt(times));
}
