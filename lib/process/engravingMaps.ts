import { type CuttingLaw, countingLevel } from './cuttingLaw.ts';
import { type CellGrid, cellGrid, type LayerCell, type LayerLattice, layerCell } from './engravingCell.ts';
import { type EngravingBeam, engravingPlanes, remembered } from './engravingPlanes.ts';
import { requireRatio } from './removal.ts';

/** How a beam engraves layer after layer. */
export interface LayerPlan {
  readonly law: CuttingLaw;
  readonly lattice: LayerLattice;
  /** Turn of the lines from layer to layer, rad. */
  readonly turn: number;
}

/** Layers that are worked out, between which those met are interpolated. */
export interface LayerMaps {
  readonly grid: CellGrid;
  /** Whether pulses leave the threshold as it is. */
  readonly steady: boolean;
  /** Pulses that the first layer counts on a place, mean over the cell. */
  readonly firstCounted: number;
  /** The layers worked out nearest to one met, to be taken by their weights. */
  around(place: LayerPlace): readonly WeighedLayer[];
  /** Planes worked out that a floor so deep (m) lies between; an angle that the spot does not see is 0. */
  planesAt(depth: number, angle: number): readonly WeighedPlane[];
  /** A layer in one of these planes, after as many layers as a node stands for, counted alike at all places. */
  layer(plane: string, node: number): LayerCell;
  /** Whether there is light to work out on a floor so deep, m. */
  covers(depth: number): boolean;
}

export interface WeighedPlane {
  /** Plane and angle, as text. */
  readonly plane: string;
  readonly weight: number;
}

/** Where in the engraving a layer is. */
export interface LayerPlace {
  /** Mean depth of the floor that it begins on, m. */
  readonly depth: number;
  /** Pulses counted before on a place, over those of the first layer. */
  readonly before: number;
  /** Of its lines, rad; only a spot that is not round sees it. */
  readonly angle: number;
}

export interface WeighedLayer {
  readonly layer: LayerCell;
  /** Those of one place add up to 1. */
  readonly weight: number;
}

/**
 * Layers of a beam on a lattice, worked out when first asked for: in planes one after another into the depth and, where
 * pulses change the threshold, after 0, 1, 2, 4, 8… layers. Where the lines turn, what was counted before is taken alike
 * everywhere for the mean; where they do not, each place of the cell has counted its own. `fineness` multiplies the points each way.
 */
export function layerMaps(beam: EngravingBeam, { law, lattice, turn }: LayerPlan, fineness = 1): LayerMaps {
  const steady = law.incubation.exponent === 1;
  const grid = cellGrid(lattice, beam.finest, fineness);
  const planes = engravingPlanes(beam, countingLevel(law));
  requireRatio((beam.unit * planes.spot(0).peak) / law.incubation.first);
  const fresh = remembered((plane: string) => layerCell(planes.table(...read(plane)), law, grid, 0));
  const firstCounted = fresh('0 0').meanCounted;
  const laterWith = (own: boolean) =>
    remembered((key: string) => {
      const [plane, node] = key.split('|') as [string, string];
      const { counted, meanCounted } = fresh(plane);
      const before = firstCounted * layersBefore(Number(node));
      const start = own ? counted.map((count) => (before * count) / meanCounted) : before;
      return layerCell(planes.table(...read(plane)), law, grid, start);
    });
  const [alike, own] = [laterWith(false), laterWith(true)];
  const layer = (plane: string, node: number) => (node === 0 ? fresh(plane) : alike(`${plane}|${node}`));
  const inPlace = (plane: string, node: number) =>
    turn !== 0 || node === 0 || fresh(plane).meanCounted === 0 ? layer(plane, node) : own(`${plane}|${node}`);
  const planesAt = (depth: number, angle: number) => {
    const [plane, part] = planes.place(depth);
    const seen = planes.spot(plane).spectrumForm === 'round' ? 0 : angle;
    return between(plane, part).map(([index, weight]) => ({ plane: `${index} ${seen}`, weight }));
  };
  const around = ({ depth, before, angle }: LayerPlace) => {
    const nodes = steady ? [[0, 1] as const] : between(...placeInNodes(before));
    return planesAt(depth, angle).flatMap(({ plane, weight }) =>
      nodes.map(([node, share]) => ({ layer: inPlace(plane, node), weight: weight * share })),
    );
  };
  return { grid, steady, firstCounted, around, planesAt, layer, covers: planes.covers };
}

function read(plane: string): readonly [plane: number, angle: number] {
  return plane.split(' ').map(Number) as unknown as readonly [number, number];
}

/** The one or two whole numbers around a place, with weights. */
function between(index: number, part: number): readonly (readonly [index: number, weight: number])[] {
  return part === 0
    ? [[index, 1]]
    : ([
        [index, 1 - part],
        [index + 1, part],
      ] as const);
}

/** Layers before that a node stands for: 0, 1, 2, 4, 8… */
export function layersBefore(node: number): number {
  return node === 0 ? 0 : 2 ** (node - 1);
}

/** The node below a number of layers before, 0 or more, and how far on it lies to the next. */
export function placeInNodes(before: number): readonly [node: number, part: number] {
  if (before < hair) return [0, 0];
  const node = before < 1 ? 0 : Math.floor(Math.log2(before) + hair) + 1;
  const low = straightAt[node]!;
  return [node, Math.max(0, (straight(before) - low) / (straightAt[node + 1]! - low))];
}

/** Rounding, in layers. */
const hair = 1e-12;

/** Mean of ln N over the pulses of a layer after `before` of them, less a constant: what the power law is straight in. */
function straight(before: number): number {
  return (1 + before) * Math.log(1 + before) - (before === 0 ? 0 : before * Math.log(before));
}

/** At the nodes; 2^30 layers are more than anyone asks for. */
const straightAt = Array.from({ length: 32 }, (_, node) => straight(layersBefore(node)));
