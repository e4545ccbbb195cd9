import { fitLinear } from '../numerics/linearLeastSquares.ts';
import { Problem } from '../problem.ts';

/** A value with its standard uncertainty, in the same SI unit. */
export interface Estimate {
  readonly value: number;
  readonly uncertainty: number;
}

/** The order of the rows and columns of `CausticFit.covariance`. */
export const causticParameters = [
  'waistPosition',
  'waistDiameter',
  'rayleighLength',
  'divergence',
  'beamPropagationRatio',
] as const;

/** A beam described by the fit of its caustic. Diameters as measured: 1/e² or second-moment. */
export interface CausticFit {
  /** Place of the waist, m. */
  readonly waistPosition: Estimate;
  /** Diameter in the waist, m. */
  readonly waistDiameter: Estimate;
  /** Distance from the waist to √2 of its diameter, m. */
  readonly rayleighLength: Estimate;
  /** Full angle of divergence, rad. */
  readonly divergence: Estimate;
  /** M², 1 for an ideal Gaussian. */
  readonly beamPropagationRatio: Estimate;
  /** Covariance of the five in the order of `causticParameters`, 5 rows of 5. */
  readonly covariance: readonly Float64Array[];
  /** Relative scatter of the measured diameters about the fit (standard deviation). */
  readonly scatter: number;
  /** What the person should know: sentences with numbers and the next step. */
  readonly notes: readonly CausticNote[];
}

export interface CausticNote {
  readonly kind:
    | 'few-points'
    | 'far-from-waist'
    | 'no-far-field'
    | 'waist-outside'
    | 'ratio-below-one'
    | 'scatter-large';
  readonly text: string;
}

const fewest = 5;

/**
 * Fits d² = a + b z + c z² (ISO 11146-1:2021) to diameters at the places z, both in metres, at the
 * wavelength in metres. Diameters are measured with a constant relative error (pixels, window and background
 * all scale with the beam), so d² has an uncertainty in proportion to d² and each residual is divided by d².
 * The divisor is the fitted d², in three passes: the measured one would favour points that came out small.
 * Uncertainties follow from the scatter through the covariance of a, b, c (JCGM 100:2008, 5.2).
 * Throws Problem 'impossible' below five points, on sizes that cannot be, and where no real waist comes out.
 */
export function fitCaustic(
  z: readonly number[],
  diameter: readonly number[],
  wavelength: number,
): CausticFit {
  checkInputs(z, diameter, wavelength);
  // Places from −1 to 1 about their middle keep the three columns apart.
  const [low, high] = [Math.min(...z), Math.max(...z)];
  const [middle, half] = [(low + high) / 2, (high - low) / 2];
  const t = z.map((place) => (place - middle) / half);
  const parabola = fitParabola(
    t,
    diameter.map((d) => d * d),
  );
  const [a, b, c] = parabola.parameters as unknown as [number, number, number];
  // Twice its uncertainty, and 1e-6 of a (half a millionth of the diameter over the range): less is a straight line.
  const curved = c > Math.max(2 * parabola.standardUncertainties[2]!, 1e-6 * Math.abs(a));
  if (!(curved && 4 * a * c > b * b)) throw noWaist(curved);
  const { values, slopes } = describeParabola(a, b, c, middle, half, wavelength);
  const covariance = propagate(slopes, parabola.covariance);
  const estimate = (i: number): Estimate => ({
    value: values[i]!,
    uncertainty: Math.sqrt(covariance[i]![i]!),
  });
  const bare = {
    waistPosition: estimate(0),
    waistDiameter: estimate(1),
    rayleighLength: estimate(2),
    divergence: estimate(3),
    beamPropagationRatio: estimate(4),
    covariance,
    scatter: Math.sqrt(parabola.reducedChiSquare) / 2,
  };
  return { ...bare, notes: describeCaustic(z, bare) };
}

function checkInputs(z: readonly number[], diameter: readonly number[], wavelength: number): void {
  if (!(wavelength > 0))
    throw new Problem('impossible', `Wavelength ${wavelength} m must be above 0.`, {
      value: `${wavelength} m`,
      allowed: 'above 0',
    });
  if (z.length !== diameter.length)
    throw new Problem(
      'impossible',
      `${z.length} places and ${diameter.length} diameters do not pair up. Give one diameter for each place.`,
    );
  const wrong = diameter.findIndex((d, i) => !(d > 0 && Number.isFinite(d) && Number.isFinite(z[i]!)));
  if (wrong >= 0)
    throw new Problem(
      'impossible',
      `Point ${wrong + 1} (z = ${z[wrong]} m, diameter ${diameter[wrong]} m) cannot be: a diameter is above 0. Correct or exclude the point.`,
      { row: wrong + 1, allowed: 'above 0' },
    );
  const places = new Set(z).size;
  if (places < fewest)
    throw new Problem(
      'impossible',
      `The caustic has ${places} different places where at least ${fewest} are needed for a waist with its uncertainty (ten after ISO 11146-1). Measure more places.`,
      { value: String(places), allowed: `${fewest} or more` },
    );
}

function fitParabola(t: readonly number[], squares: readonly number[]) {
  const design = t.flatMap((place) => [1, place, place * place]);
  let uncertainties: readonly number[] = squares;
  for (let pass = 0; ; pass++) {
    const fit = fitLinear(design, squares, 3, { uncertainties });
    if (pass === 3) return fit;
    const [a = 0, b = 0, c = 0] = fit.parameters;
    // A parabola that dips to zero or below cannot weigh; a thousandth of the measured square stands in.
    uncertainties = t.map((place, i) => Math.max(a + b * place + c * place * place, 1e-3 * squares[i]!));
  }
}

function noWaist(curved: boolean): Problem {
  const why = curved
    ? 'd² falls below zero between the points'
    : 'd² does not curve upwards along z beyond its scatter';
  return new Problem(
    'impossible',
    `The points have no waist: ${why}. Measure on both sides of the waist and beyond two Rayleigh lengths, and check the units of both columns.`,
    { allowed: 'points on both sides of a waist' },
  );
}

/**
 * The five parameters from d² = a + b t + c t², t = (z − middle)/half, and their derivatives by a, b, c:
 * z0 = middle − half·b/2c, d0 = √(Δ/4c), zR = half·√Δ/2c, θ = √c/half, M² = π√Δ/(8 λ half), Δ = 4ac − b².
 */
function describeParabola(a: number, b: number, c: number, middle: number, half: number, wavelength: number) {
  const discriminant = 4 * a * c - b * b;
  const root = Math.sqrt(discriminant);
  const rootSlopes = [(2 * c) / root, -b / root, (2 * a) / root] as const;
  const waist = Math.sqrt(discriminant / (4 * c));
  const rayleigh = (half * root) / (2 * c);
  const divergence = Math.sqrt(c) / half;
  const ratio = Math.PI / (8 * wavelength * half);
  const values = [middle - (half * b) / (2 * c), waist, rayleigh, divergence, ratio * root];
  const slopes = [
    [0, -half / (2 * c), (half * b) / (2 * c * c)],
    rootSlopes.map((slope, i) => waist * (slope / root - (i === 2 ? 1 / (2 * c) : 0))),
    rootSlopes.map((slope, i) => rayleigh * (slope / root - (i === 2 ? 1 / c : 0))),
    [0, 0, divergence / (2 * c)],
    rootSlopes.map((slope) => ratio * slope),
  ];
  return { values, slopes };
}

function propagate(
  slopes: readonly (readonly number[])[],
  covariance: readonly Float64Array[],
): Float64Array[] {
  const product = (left: readonly number[], right: readonly number[]) =>
    left.reduce((sum, l, i) => sum + right.reduce((inner, r, k) => inner + l * r * covariance[i]![k]!, 0), 0);
  return slopes.map((left) => Float64Array.from(slopes, (right) => product(left, right)));
}

/** The notes on a fit: the spread of places that ISO 11146-1:2021 asks for, and results that cannot be. */
function describeCaustic(z: readonly number[], fit: Omit<CausticFit, 'notes'>): CausticNote[] {
  const waist = fit.waistPosition.value;
  const rayleigh = fit.rayleighLength.value;
  const near = z.filter((place) => Math.abs(place - waist) <= rayleigh).length;
  const far = z.filter((place) => Math.abs(place - waist) >= 2 * rayleigh).length;
  const notes: CausticNote[] = [];
  const add = (kind: CausticNote['kind'], text: string) => notes.push({ kind, text });
  if (z.length < 10)
    add(
      'few-points',
      `The fit rests on ${z.length} points; ISO 11146-1 asks for at least ten. Measure ${10 - z.length} more.`,
    );
  if (2 * near < z.length)
    add(
      'far-from-waist',
      `${near} of ${z.length} points lie within one Rayleigh length (${millimetres(rayleigh)}) of the waist; about half should, to fix the waist diameter. Measure more places near ${millimetres(waist)}.`,
    );
  if (3 * far < z.length)
    add(
      'no-far-field',
      `${far} of ${z.length} points lie beyond two Rayleigh lengths (${millimetres(2 * rayleigh)}) from the waist; about half should, to fix the divergence. Measure farther out.`,
    );
  if (waist < Math.min(...z) || waist > Math.max(...z))
    add(
      'waist-outside',
      `The waist at ${millimetres(waist)} lies outside the measured range: it is an extrapolation. Measure on both sides of it, with a lens that forms a waist if need be.`,
    );
  addRatioNote(fit, add);
  if (fit.scatter > 0.05)
    add(
      'scatter-large',
      `The diameters scatter by ${(100 * fit.scatter).toPrecision(2)} % about the fit, where a camera gives 1 % to 2 %. Look for a wrong point, or a beam that is not the same in both axes.`,
    );
  return notes;
}

function addRatioNote(
  fit: Omit<CausticFit, 'notes'>,
  add: (kind: 'ratio-below-one', text: string) => void,
): void {
  const { value, uncertainty } = fit.beamPropagationRatio;
  if (value >= 1) return;
  const within = value + 2 * uncertainty >= 1;
  const reading = `M² = ${value.toFixed(3)} ± ${uncertainty.toPrecision(2)} is below 1, which no beam can be`;
  add(
    'ratio-below-one',
    within
      ? `${reading}; it agrees with 1 within its uncertainty. Use 1, or measure more points.`
      : `${reading}. Check the wavelength, the units of both columns, and whether radii were given as diameters.`,
  );
}

function millimetres(metres: number): string {
  return `${(1e3 * metres).toPrecision(3)} mm`;
}
