import type { Spot } from '../optics/askedSpot.ts';
import type { Stretch } from '../optics/depthInUse.ts';

/** What the profile is in one plane; the peak as a part of that in the plane set. */
export interface MetPlane {
  readonly z: number;
  readonly peak: number;
  /** How far the axis lies below the peak, as a part of it. */
  readonly dip: number;
}

/** Profiles over a stretch of planes, and the extremes among those met. */
export interface PlanesMet {
  readonly z: Float64Array;
  readonly peak: Float64Array;
  readonly dip: Float64Array;
  readonly lowest: MetPlane;
  readonly highest: MetPlane;
  readonly deepest: MetPlane;
}

/** Planes looked at among those met at least, and how many to a Rayleigh length near the focus; further out they are wider apart, as profiles change less. */
const [fewest, perRayleigh] = [21, 5];
/** Planes looked at beyond either end. */
const beyond = 4;

/**
 * The peak fluence and the dip of the axis in the planes of `met`, and of `shown` on either side for a chart. Extremes by
 * looking closer about the best plane, to 1e-3: the peak may jump from place to place, so that its least value is a kink. `report` as in a quantity's compute.
 */
export function planesMet(
  spotIn: (z: number) => Spot,
  set: Spot,
  met: Stretch,
  shown: Stretch,
  rayleighLength: number,
  report?: (part: number) => void,
): PlanesMet {
  // The three extremes often lie in the same places.
  const known = new Map<number, MetPlane>();
  const look = (z: number): MetPlane => {
    const seen = known.get(z);
    if (seen) return seen;
    const spot = spotIn(z);
    const plane = { z, peak: spot.peak / set.peak, dip: 1 - spot.irradianceAt(0, 0) / spot.peak };
    known.set(z, plane);
    return plane;
  };
  const length = met.to - met.from;
  const [first, last] = [met.from, met.to].map((z) => Math.asinh(z / rayleighLength)) as [number, number];
  const count = length > 0 ? Math.max(fewest, 1 + Math.ceil(perRayleigh * (last - first))) : 1;
  const total = count + 2 * beyond;
  const places = [
    ...steps(shown.from, met.from),
    ...Array.from({ length: count }, (_, i) =>
      i === 0
        ? met.from
        : i === count - 1
          ? met.to
          : rayleighLength * Math.sinh(first + ((last - first) * i) / (count - 1)),
    ),
    ...steps(shown.to, met.to).reverse(),
  ];
  const planes = places.map((z, i) => {
    report?.(i / total);
    return look(z);
  });
  const among = planes.filter(({ z }) => z >= met.from && z <= met.to);
  return {
    z: Float64Array.from(planes, ({ z }) => z),
    peak: Float64Array.from(planes, ({ peak }) => peak),
    dip: Float64Array.from(planes, ({ dip }) => dip),
    lowest: extreme(among, look, ({ peak }) => -peak),
    highest: extreme(among, look, ({ peak }) => peak),
    deepest: extreme(among, look, ({ dip }) => dip),
  };
}

/** Equally spaced places from `start`, short of `end`; none where there is no way between. */
function steps(start: number, end: number): number[] {
  if (start === end) return [];
  return Array.from({ length: beyond }, (_, i) => start + ((end - start) * i) / beyond);
}

/** The plane of the greatest value: the best of those looked at, then twice the best of planes four times closer about it. */
function extreme(
  planes: readonly MetPlane[],
  look: (z: number) => MetPlane,
  value: (plane: MetPlane) => number,
): MetPlane {
  let near = planes;
  for (let round = 0; ; round++) {
    const best = near.reduce((at, plane, i) => (value(plane) > value(near[at]!) ? i : at), 0);
    if (round === 2 || near.length === 1) return near[best]!;
    const around = near.slice(Math.max(0, best - 1), best + 2);
    near = around.flatMap((plane, i) => (i === 0 ? [plane] : [...between(around[i - 1]!, plane), plane]));
  }
  function between({ z: from }: MetPlane, { z: to }: MetPlane): MetPlane[] {
    return [1, 2, 3].map((i) => look(from + ((to - from) * i) / 4));
  }
}
