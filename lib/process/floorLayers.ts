import type { Progress } from '../numerics/progress.ts';
import type { Engraved } from './engraving.ts';
import type { CellGrid } from './engravingCell.ts';
import { type LayerMaps, placeInNodes } from './engravingMaps.ts';
import { cellReader, type FloorPatch } from './floorMap.ts';

/** Layers one by one until so many are done; then as many together as are this part of those before. */
const [single, panelPart] = [24, 0.25];
/** Angles that differ by less, rad, are one: at a centimetre a nanometre. */
const sameAngle = 1e-7;

/** Layers of one angle among those taken together. */
export interface AngleSum {
  readonly angle: number;
  /** Planes worked out, with the number of layers that each stands for. */
  readonly planes: Map<string, number>;
}

/** Layers taken together, by their angles. */
export interface LayerGroup {
  readonly sums: readonly AngleSum[];
  /** Pulses counted when they come, on the mean, over those counted when the first of them comes. */
  readonly ahead: number;
}

/**
 * The first `layers` layers in groups: all in one where the threshold is steady, else so few together that what is counted
 * changes little within a group.
 */
export function layerGroups(
  maps: LayerMaps,
  { depth, before }: Pick<Engraved, 'depth' | 'before'>,
  layers: number,
  turn: number,
): readonly LayerGroup[] {
  const groups: LayerGroup[] = [];
  for (let start = 0; start < layers; ) {
    const together = maps.steady ? layers : start < single ? 1 : Math.floor(panelPart * start);
    const end = Math.min(layers, start + together);
    const middle = (before[start]! + before[end - 1]!) / 2;
    const ahead = before[start] === 0 ? 1 : middle / before[start]!;
    groups.push({ sums: byAngle(maps, depth, start, end, turn), ahead });
    start = end;
  }
  return groups;
}

function byAngle(maps: LayerMaps, depth: Float64Array, start: number, end: number, turn: number) {
  const sums = new Map<number, AngleSum>();
  for (let layer = start; layer < end; layer++) {
    const angle = (layer * turn) % (2 * Math.PI);
    const key = Math.round(angle / sameAngle);
    const sum = sums.get(key) ?? { angle, planes: new Map() };
    sums.set(key, sum);
    for (const { plane, weight } of maps.planesAt(depth[layer]!, angle))
      sum.planes.set(plane, (sum.planes.get(plane) ?? 0) + weight);
  }
  return [...sums.values()];
}

/**
 * Depth of the floor at the points of a patch, all groups added up. Each place counts its own pulses, and each layer removes
 * there what it removes after as many; of layers taken together, after as many as come in their middle.
 */
export function addGroups(
  maps: LayerMaps,
  groups: readonly LayerGroup[],
  patch: FloorPatch,
  report?: Progress,
): Float64Array {
  const floor = new Float64Array(patch.points ** 2);
  const counted = new Float64Array(maps.steady ? 0 : floor.length);
  const angles = groups.reduce((sum, { sums }) => sum + sums.length, 0);
  let done = 0;
  for (const { sums, ahead } of groups) {
    const start = counted.slice();
    for (const sum of sums) {
      addAngle(floor, counted, start, ahead, maps, sum, patch);
      done++;
      report?.(done / angles);
    }
  }
  return floor;
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
