import { Problem } from '../problem.ts';
import { createFieldKernel, fieldFromKernel, layOutField } from './focalField.ts';
import type { Light } from './light.ts';
import { createAxisField } from './onAxis.ts';
import type { Zone } from './zones.ts';

/**
 * The maps here vary the beam while plate, stop and lens stay. A phase enters only as a factor of each zone, and a zone
 * is a disc less the disc inside it: the fields of the discs are kept, and a new phase costs a sum over them.
 */
export interface DiscFields {
  readonly columns: number;
  readonly rows: number;
  /** One a disc, from the innermost. */
  readonly fields: readonly Float64Array[];
}

/** Values over a grid of step ratio and a second coordinate, row by row. */
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

/** Factor of each disc in the field: e^{iφ} of its own zone less that of the zone around it. */
function discFactors(phases: readonly number[]): { re: number; im: number }[] {
  return phases.map((phase, j) => {
    const next = phases[j + 1];
    return {
      re: Math.cos(phase) - (next === undefined ? 0 : Math.cos(next)),
      im: Math.sin(phase) - (next === undefined ? 0 : Math.sin(next)),
    };
  });
}

/**
 * Fields about the axis of discs with `edges` in units of the step radius, over step ratio κ (columns) and place (rows),
 * times f/B: re, im of U0, then of U2. `places` are s = z/unit of the scale. Coherent light. Closed form.
 */
export function axisDiscs(
  edges: readonly number[],
  ratios: Float64Array,
  places: Float64Array,
  { bend, shift }: Pick<DistanceScale, 'bend' | 'shift'>,
): DiscFields {
  const [columns, rows] = [ratios.length, places.length];
  const fields = edges.map((edge) => {
    const values = new Float64Array(4 * columns * rows);
    ratios.forEach((ratio, column) => {
      const fieldAt = createAxisField([{ outer: edge * ratio, phase: 0 }]);
      places.forEach((place, row) => {
        const spread = 1 + bend * place;
        const field = fieldAt((place / spread - shift) / (ratio * ratio));
        const at = 4 * (row * columns + column);
        for (let k = 0; k < 4; k++) values[at + k] = field[k]! / spread;
      });
    });
    return values;
  });
  return { columns, rows, fields };
}

/** Relative irradiance on the axis, and its curvature (coefficient of ϱ²), over the grid of {@link axisDiscs}. */
export function axisMap({ columns, rows, fields }: DiscFields, phases: readonly number[]) {
  const factors = discFactors(phases);
  const irradiance = new Float64Array(columns * rows);
  const curvature = new Float64Array(columns * rows);
  for (let i = 0; i < columns * rows; i++) {
    let [re0, im0, re2, im2] = [0, 0, 0, 0];
    for (let j = 0; j < fields.length; j++) {
      const { re, im } = factors[j]!;
      const u = fields[j]!;
      re0 += re * u[4 * i]! - im * u[4 * i + 1]!;
      im0 += re * u[4 * i + 1]! + im * u[4 * i]!;
      re2 += re * u[4 * i + 2]! - im * u[4 * i + 3]!;
      im2 += re * u[4 * i + 3]! + im * u[4 * i + 2]!;
    }
    irradiance[i] = re0 * re0 + im0 * im0;
    curvature[i] = -2 * (re0 * re2 + im0 * im2);
  }
  return { columns, rows, irradiance, curvature };
}

/**
 * Fields in the focus (ζ = 0), which are real, of discs with `edges` in units of the step radius, over
 * v = 2πaρ/(λB) (columns), which does not contain the beam, and step ratio κ (rows).
 */
export function focusDiscs(edges: readonly number[], ratios: Float64Array, radii: Float64Array): DiscFields {
  const smallest = ratios.reduce((a, b) => Math.min(a, b));
  const fields = edges.map((edge) => {
    const disc: Zone[] = [{ outer: edge, phase: 0 }];
    const kernel = createFieldKernel(layOutField(disc, 1 / smallest, radii.at(-1)!, 0), radii);
    const values = new Float64Array(ratios.length * radii.length);
    ratios.forEach((ratio, row) => {
      values.set(fieldFromKernel(kernel, [0], ratio, 0).re, row * radii.length);
    });
    return values;
  });
  return { columns: radii.length, rows: ratios.length, fields };
}

/** Profile in the focus against step ratio at equal pulse energy, |U|²/κ², over the grid of {@link focusDiscs}. */
export function focusAgainstRatio(
  discs: DiscFields,
  phases: readonly number[],
  ratios: Float64Array,
): RatioGrid {
  const { columns, rows, fields } = discs;
  const factors = discFactors(phases);
  const values = new Float64Array(columns * rows);
  for (let i = 0; i < columns * rows; i++) {
    let [re, im] = [0, 0];
    for (let j = 0; j < fields.length; j++) {
      re += factors[j]!.re * fields[j]![i]!;
      im += factors[j]!.im * fields[j]![i]!;
    }
    values[i] = (re * re + im * im) / ratios[Math.floor(i / columns)]! ** 2;
  }
  return { columns, rows, values };
}
