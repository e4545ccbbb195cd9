import type { Light } from './light.ts';

/**
 * Sine of the half-angle at which the edge of the beam converges: the 1/e² radius at the plate, or the stop where that is
 * smaller, over the focal length (a lens that obeys the sine condition). Above 1 no lens can focus so.
 */
export function convergenceOf({ beamRadius, plate, focalLength }: Light): number {
  const stop = plate.kind === 'round' ? plate.zones.at(-1)!.outer : Number.POSITIVE_INFINITY;
  return Math.min(beamRadius, stop) / focalLength;
}

/**
 * Relative error of irradiances that a paraxial scalar model makes at that convergence: of the order s²/2. In the
 * Debye integral of an aplanatic lens rays weigh 1/√cos θ ≈ 1 + s²/4 more in amplitude, which makes s²/2 on the axis of a
 * Gaussian of 1/e² radius s·f; of linearly polarised light a share of the same order turns along the axis. Source: B. Richards and E. Wolf, Proc. R. Soc. A 253, 358 (1959), memory.
 */
export function paraxialError(convergence: number): number {
  return convergence ** 2 / 2;
}

/** Errors up to here are left unsaid: less than what a beam diameter is usually known to. */
const unsaid = 0.02;

/** The note beside what rests on the paraxial model; undefined where its error stays below 2 %. */
export function paraxialNote(convergence: number): string | undefined {
  const error = paraxialError(convergence);
  if (error < unsaid) return undefined;
  if (convergence >= 1) {
    return 'The beam is wider than any lens of this focal length can focus; take a longer focal length or a smaller beam. The value is what the paraxial model gives all the same.';
  }
  return `The beam converges steeply (sin θ = ${convergence.toPrecision(2)}): this model is paraxial and scalar, and irradiances may be off by about ${(100 * error).toPrecision(2)} %.`;
}
