import { Problem } from '../problem.ts';
import { type FamilySamples, profileFromSamples, sampleFamily } from './familySamples.ts';
import { type Light, planeOfDefocus } from './light.ts';
import { type Judged, judgeProfile, type PlaneNumbers, planeNumbers } from './planeNumbers.ts';
import type { ProfileKind } from './profileMetrics.ts';
import { roundShapeOf, transmissionOf } from './roundSpot.ts';

/** A stretch along z over which the profile stays of one kind; the numbers are those of its middle plane in ζ. */
export interface KindInterval extends PlaneNumbers {
  /** The kind, told at the ends to 1e-5 in ζ. */
  readonly kind: ProfileKind;
  /** Ends in ζ, ascending, and in metres. */
  readonly from: number;
  readonly to: number;
  readonly zFrom: number;
  readonly zTo: number;
  /** Largest dip of the stretch, and the ζ where it is. */
  readonly largestDip: number;
  readonly largestDipAt: number;
}

/** B/f stays between a tenth and ten: beyond, the light runs parallel or the workpiece nears the image of the plate. */
const widestSpread = 10;

/**
 * Ends in ζ of a search `range` Rayleigh lengths either side of the focus, cut to where the focal formulas hold.
 * Throws `outside` where nothing is left.
 */
export function searchedEnds(light: Light, range: number): [number, number] {
  const { wavelength, beamRadius, focalLength, plateDistance, wavefrontCurvature } = light;
  // f/B = 1 − slope·(ζ + shift), see planeOfDefocus.
  const scale = (Math.PI * beamRadius * beamRadius) / wavelength;
  const slope = (focalLength - plateDistance) / scale;
  const shift = wavefrontCurvature * scale;
  const ends = [1 - 1 / widestSpread, 1 - widestSpread].map((end) => end / slope - shift);
  const low = slope === 0 ? -range : Math.max(-range, Math.min(...ends));
  const high = slope === 0 ? range : Math.min(range, Math.max(...ends));
  if (low < high) return [low, high];
  throw new Problem(
    'outside',
    `Within ${range} Rayleigh lengths of the focus the beam comes to no focus behind the lens; make the wavefront flatter or move the plate to one focal length before the lens.`,
    { input: 'lens.typedPlateDistance' },
  );
}

/** The samples of all planes of a search. Throws as {@link searchedEnds}, and for plates that are not round. */
export function sampleSearch(light: Light, range: number): FamilySamples {
  return sampleFamily(roundShapeOf(light), ...searchedEnds(light, range));
}

/** One plane looked at. */
export interface JudgedPlane extends Judged {
  readonly defocus: number;
}

/** |U|² holds no shorter period in ζ than 0.86 (2π/2.7²): 0.02 is a fortieth of it. */
const scanStep = 0.02;
const endTolerance = 1e-5;

function judgeAt(samples: FamilySamples, defocus: number): JudgedPlane {
  return { defocus, ...judgeProfile(profileFromSamples(samples, defocus)) };
}

/**
 * The planes of a scan 0.02 apart, and between them the tops and bottoms of dip and plateau ratio, by a parabola: a
 * narrow stretch of another kind shows there.
 */
export function scanKinds(samples: FamilySamples): JudgedPlane[] {
  const { low, high } = samples.rows;
  const steps = Math.ceil((high - low) / scanStep);
  const planes = Array.from({ length: steps + 1 }, (_, i) =>
    judgeAt(samples, low + ((high - low) * i) / steps),
  );
  const between = planes
    .slice(1, -1)
    .flatMap((plane, i) => turningPoints(planes[i]!, plane, planes[i + 2]!))
    .map((defocus) => judgeAt(samples, defocus));
  return [...planes, ...between].sort((a, b) => a.defocus - b.defocus);
}

/** Where dip or plateau ratio turn near the middle of three planes of one kind. */
function turningPoints(a: JudgedPlane, b: JudgedPlane, c: JudgedPlane): number[] {
  if (a.kind !== b.kind || b.kind !== c.kind) return [];
  return (['dip', 'areaRatio'] as const).flatMap((key) => {
    const left = b[key] - a[key];
    const right = c[key] - b[key];
    if (left * right > 0 || left === right) return [];
    return [b.defocus + ((c.defocus - a.defocus) / 4) * ((left + right) / (left - right))];
  });
}

/** Planes where the kind changes between two, each with the kind before and behind it. */
function changesBetween(samples: FamilySamples, a: JudgedPlane, b: JudgedPlane): JudgedPlane[] {
  if (a.kind === b.kind) return [];
  const defocus = (a.defocus + b.defocus) / 2;
  if (b.defocus - a.defocus < endTolerance) return [{ ...b, defocus }];
  const middle = judgeAt(samples, defocus);
  return [...changesBetween(samples, a, middle), ...changesBetween(samples, middle, b)];
}

/**
 * Kinds of profile along ζ over all that was sampled, ascending; ends to 1e-5. Kinds as in {@link file://./profileMetrics.ts}.
 * About 100 µs a plane.
 */
export function findFamily(light: Light, samples: FamilySamples): KindInterval[] {
  const planes = scanKinds(samples);
  const changes = planes.slice(1).flatMap((plane, i) => changesBetween(samples, planes[i]!, plane));
  const looked = [...planes, ...changes];
  return [planes[0]!, ...changes].map(({ kind, defocus: from }, i) => {
    const to = changes[i]?.defocus ?? samples.rows.high;
    const inside = looked.filter(({ defocus }) => from <= defocus && defocus <= to);
    const darkest = inside.reduce((a, b) => (b.dip > a.dip ? b : a));
    return {
      ...numbersInPlane(light, samples, (from + to) / 2),
      kind,
      from,
      to,
      zFrom: planeOfDefocus(light, from),
      zTo: planeOfDefocus(light, to),
      largestDip: darkest.dip,
      largestDipAt: darkest.defocus,
    };
  });
}

/** Numbers of any plane that was sampled. */
export function numbersInPlane(light: Light, samples: FamilySamples, defocus: number): PlaneNumbers {
  return planeNumbers(light, defocus, profileFromSamples(samples, defocus), transmissionOf(light));
}
