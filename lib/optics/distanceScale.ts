import { Problem } from '../problem.ts';
import type { Light } from './light.ts';

/**
 * How places behind the lens lie against ζκ² = π a² z/(λ f B) − π a²/(λ R_b), a coordinate without the beam: with
 * s = z/`unit` and B/f = 1 + `bend`·s (Collins, J. Opt. Soc. Am. 60, 1168 (1970)), ζκ² = s/(1 + bend·s) − `shift`.
 */
export interface DistanceScale {
  /** λf²/(πa²) in m: the Rayleigh length of the beam that is as wide as the step. */
  readonly unit: number;
  /** (f − d)λ/(πa²): 0 for a plate one focal length before the lens. */
  readonly bend: number;
  /** πa²/(λR_b): 0 for a flat wavefront. */
  readonly shift: number;
}

/** The scale for a step of radius a in m; the beam's radius does not enter. */
export function distanceScale(
  light: Pick<Light, 'wavelength' | 'focalLength' | 'plateDistance' | 'wavefrontCurvature'>,
  stepRadius: number,
): DistanceScale {
  const { wavelength, focalLength, plateDistance, wavefrontCurvature } = light;
  const area = Math.PI * stepRadius * stepRadius;
  return {
    unit: (wavelength * focalLength * focalLength) / area,
    bend: ((focalLength - plateDistance) * wavelength) / area,
    shift: (wavefrontCurvature * area) / wavelength,
  };
}

/** B/f up to which places are shown: the spot is as many times as wide as it would be for a plate at d = f. */
const widestSpread = 10;

/**
 * Places s that show ζκ² from `low` to `high`, as far as B/f stays below ten; further on the light runs parallel and
 * never comes to these ζ. Throws `outside` where nothing of the span is left.
 */
export function shownPlaces(
  [low, high]: readonly [number, number],
  { bend, shift }: Pick<DistanceScale, 'bend' | 'shift'>,
): [number, number] {
  // B/f = 1/(1 − bend·(ζκ² + shift))
  const end = (1 - 1 / widestSpread) / bend;
  const from = bend < 0 ? Math.max(low + shift, end) : low + shift;
  const to = bend > 0 ? Math.min(high + shift, end) : high + shift;
  if (from < to) return [from / (1 - bend * from), to / (1 - bend * to)];
  throw noFocus();
}

/** B/f where ζ = 0, in the focus of the unshaped beam: 1 for a flat wavefront or a plate at d = f. Throws `outside` above ten. */
export function spreadInFocus({ bend, shift }: Pick<DistanceScale, 'bend' | 'shift'>): number {
  const inverse = 1 - bend * shift;
  if (inverse * widestSpread >= 1) return 1 / inverse;
  throw noFocus();
}

function noFocus(): Problem {
  return new Problem(
    'outside',
    'With this wavefront and this distance from plate to lens the beam comes to no focus behind the lens; make the wavefront flatter or move the plate to one focal length before the lens.',
    { input: 'lens.typedPlateDistance' },
  );
}

/** Rows of a map over places behind the lens. */
export interface PlaceRows {
  /** s of the first and last row; the others lie evenly between. */
  readonly ends: readonly [number, number];
  /** ζκ² of each row. */
  readonly distances: Float64Array;
  /** (f/B)² of each row. */
  readonly strengths: Float64Array;
}

/** `count` rows that show ζκ² over `span`, as far as {@link shownPlaces} goes. */
export function placeRows(
  span: readonly [number, number],
  scale: Pick<DistanceScale, 'bend' | 'shift'>,
  count: number,
): PlaceRows {
  const ends = shownPlaces(span, scale);
  const places = Float64Array.from(
    { length: count },
    (_, i) => ends[0] + ((ends[1] - ends[0]) * i) / (count - 1),
  );
  const spreads = places.map((place) => 1 + scale.bend * place);
  return {
    ends,
    distances: places.map((place, i) => place / spreads[i]! - scale.shift),
    strengths: spreads.map((spread) => 1 / (spread * spread)),
  };
}
