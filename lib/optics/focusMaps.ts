import { Problem } from '../problem.ts';
import { createFieldKernel, fieldFromKernel, layOutField } from './focalField.ts';
import type { Light } from './light.ts';
import { irradianceOnAxis } from './onAxis.ts';
import type { Zone } from './zones.ts';

/** Values over a grid of step ratio (columns) and a second coordinate (rows, from its lowest value). */
export interface RatioGrid {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
}

/** Equally spaced values from `low` to `high`, both included. */
export function spaced(low: number, high: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

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

/**
 * What happens on the axis over step ratio κ and place: relative irradiance (f/B)²|U0|², and its curvature (coefficient
 * of ϱ²). The beam is varied while plate, stop, lens and wavefront stay; `places` are s = z/unit of the scale. Zones in
 * units of the step radius; coherent light. Closed form.
 */
export function axisMap(
  zones: readonly Zone[],
  ratios: Float64Array,
  places: Float64Array,
  { bend, shift }: Pick<DistanceScale, 'bend' | 'shift'>,
) {
  const columns = ratios.length;
  const rows = places.length;
  const irradiance = new Float64Array(columns * rows);
  const curvature = new Float64Array(columns * rows);
  for (let column = 0; column < columns; column++) {
    const ratio = ratios[column]!;
    const scaled = zones.map((zone) => ({ outer: zone.outer * ratio, phase: zone.phase }));
    for (let row = 0; row < rows; row++) {
      const spread = 1 + bend * places[row]!;
      const here = irradianceOnAxis(scaled, (places[row]! / spread - shift) / (ratio * ratio));
      irradiance[row * columns + column] = here.value / (spread * spread);
      curvature[row * columns + column] = here.slope / (spread * spread);
    }
  }
  return { columns, rows, irradiance, curvature };
}

/**
 * Profile in the focus (ζ = 0) against step ratio at equal pulse energy: |U|²/κ² over κ (rows) and v = 2πaρ/(λB)
 * (columns), which does not contain the beam. Zones in units of the step radius; coherent light. One Bessel matrix
 * serves all rows.
 */
export function focusAgainstRatio(
  zones: readonly Zone[],
  ratios: Float64Array,
  radii: Float64Array,
): RatioGrid {
  const phases = zones.map((zone) => zone.phase);
  const smallest = ratios.reduce((a, b) => Math.min(a, b));
  const layout = layOutField(zones, 1 / smallest, radii.at(-1)!, 0);
  const kernel = createFieldKernel(layout, radii);
  const values = new Float64Array(ratios.length * radii.length);
  ratios.forEach((ratio, row) => {
    const { re, im } = fieldFromKernel(kernel, phases, ratio, 0);
    for (let i = 0; i < radii.length; i++) {
      values[row * radii.length + i] = (re[i]! ** 2 + im[i]! ** 2) / (ratio * ratio);
    }
  });
  return { columns: radii.length, rows: ratios.length, values };
}
