/** A plate with a round step in units of the 1/e² beam radius, as physics.md writes it: κ, R/w, phase in rad. */
export interface SummedPlate {
  readonly ratio: number;
  /** Far out, nothing passes anyway: 3 for a plate without a stop leaves e^{−9} of the amplitude away. */
  readonly stop: number;
  readonly phase: number;
}

/** J0(x) as the mean of cos(x sin θ) over a half-turn: exact to 1e-12 with 64 places while x stays below 40. */
function meanCosine(x: number): number {
  let sum = 0;
  for (let i = 0; i < 64; i++) sum += Math.cos(x * Math.sin((Math.PI * (i + 0.5)) / 64));
  return sum / 64;
}

/**
 * |U(ϱ,ζ)|² with U = 2 ∫ t(x) e^{−(1+iζ)x²} J0(2ϱx) x dx (S. A. Collins, J. Opt. Soc. Am. 60, 1168 (1970)), each zone
 * summed in 600 strips by the midpoint rule: good to 1e-5.
 */
export function irradianceBySum({ ratio, stop, phase }: SummedPlate, rho: number, zeta: number): number {
  const inside = zone(0, ratio, rho, zeta);
  const outside = zone(ratio, stop, rho, zeta);
  const re = Math.cos(phase) * inside.re - Math.sin(phase) * inside.im + outside.re;
  const im = Math.cos(phase) * inside.im + Math.sin(phase) * inside.re + outside.im;
  return re * re + im * im;
}

function zone(from: number, to: number, rho: number, zeta: number): { re: number; im: number } {
  const strips = 600;
  const width = (to - from) / strips;
  let re = 0;
  let im = 0;
  for (let i = 0; i < strips; i++) {
    const x = from + (i + 0.5) * width;
    const size = 2 * Math.exp(-x * x) * meanCosine(2 * rho * x) * x * width;
    re += size * Math.cos(zeta * x * x);
    im -= size * Math.sin(zeta * x * x);
  }
  return { re, im };
}

/** Values at 0, step, 2 step … up to `end`. */
export function table(valueAt: (rho: number) => number, end: number, step: number): number[] {
  return Array.from({ length: Math.round(end / step) + 1 }, (_, i) => valueAt(i * step));
}
