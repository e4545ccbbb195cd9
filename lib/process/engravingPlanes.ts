import type { Spot } from '../optics/askedSpot.ts';
import type { PlaceTable } from './engravingCell.ts';
import { type FluenceTable, fluenceTable } from './fluenceTable.ts';

/** The beam that engraves, plane by plane. */
export interface EngravingBeam {
  /** Its spot in the plane z, m behind the focus. */
  readonly spotAt: (z: number) => Spot;
  /** Plane of the fresh surface, m. */
  readonly plane: number;
  /** Rayleigh length of the unshaped beam, m: over a small part of it a spot changes little. */
  readonly rayleigh: number;
  /** Diameter of the smallest spot that is met, m: grids resolve it. */
  readonly finest: number;
  /** Fluence of relative irradiance 1, J/m². */
  readonly unit: number;
  /** Furthest plane in which there is a spot, m; without end where left out. */
  readonly furthest?: number;
}

/** Planes from the fresh surface down into the depth, each worked out when first asked for. */
export interface EngravingPlanes {
  readonly spot: (plane: number) => Spot;
  /** Fluence above `level` under lines at `angle`, in coordinates along and across them. */
  readonly table: (plane: number, angle: number) => PlaceTable;
  /** The plane above a place so deep below the fresh surface (m), and how far on that place lies to the next, 0 to 1. */
  readonly place: (depth: number) => readonly [plane: number, part: number];
  /** Whether there is a spot so deep, m. */
  readonly covers: (depth: number) => boolean;
}

/** Planes lie this part of √(z_R² + z²) apart: between two of them what is removed runs straight, see the tests. */
const planeStep = 0.07;

/** The planes of a beam, with fluences above `level`, J/m². */
export function engravingPlanes(beam: EngravingBeam, level: number): EngravingPlanes {
  const planes = [beam.plane];
  const spot = remembered((plane: number) => beam.spotAt(planes[plane]!));
  const straight = remembered((plane: number) => fluenceTable(spot(plane), beam.unit, level));
  return {
    spot,
    table: (plane, angle) =>
      spot(plane).spectrumForm === 'round' ? straight(plane) : turnedTable(straight(plane), angle),
    place: (depth) => placeInPlanes(planes, beam, beam.plane + depth),
    covers: (depth) => beam.furthest === undefined || beam.plane + depth < beam.furthest,
  };
}

/** A function of a number or text that keeps what it has worked out. */
export function remembered<K, V>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>();
  return (key) => {
    if (!known.has(key)) known.set(key, make(key));
    return known.get(key)!;
  };
}

/** The same fluences in coordinates along lines at `angle`, and across. */
function turnedTable({ reach, at }: FluenceTable, angle: number): PlaceTable {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { reach, at: (x, y) => at(c * x - s * y, s * x + c * y) };
}

/** Adds planes as far down as z, which lies before the furthest. */
function placeInPlanes(
  planes: number[],
  { rayleigh, furthest }: EngravingBeam,
  z: number,
): readonly [number, number] {
  while (planes.at(-1)! <= z) {
    const last = planes.at(-1)!;
    const next = last + planeStep * Math.hypot(rayleigh, last);
    planes.push(furthest === undefined ? next : Math.min(furthest, next));
  }
  let plane = planes.length - 2;
  while (plane > 0 && planes[plane]! > z) plane--;
  return [plane, (z - planes[plane]!) / (planes[plane + 1]! - planes[plane]!)];
}
