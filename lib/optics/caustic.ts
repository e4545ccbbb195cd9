import { fitLinear } from '../numerics/linearLeastSquares.ts';
import { Problem } from '../problem.ts';
import type { CausticFit, Estimate } from './causticFit.ts';
import { describeCaustic } from './causticNotes.ts';

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
    spread: countPlaces(z, values[0]!, values[2]!),
  };
  return { ...bare, notes: describeCaustic(z, bare) };
}

function countPlaces(z: readonly number[], waist: number, rayleigh: number): CausticFit['spread'] {
  const count = (fits: (distance: number) => boolean) =>
    z.filter((place) => fits(Math.abs(place - waist))).length;
  return {
    points: z.length,
    near: count((distance) => distance <= rayleigh),
    far: count((distance) => distance >= 2 * rayleigh),
  };
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
      `The caustic has ${places} different ${places === 1 ? 'place' : 'places'} where at least ${fewest} are needed for a waist with its uncertainty (ten after ISO 11146-1). Measure more places.`,
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
