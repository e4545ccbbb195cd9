/** A row of equal spots that move side by side, and the workpiece; SI. */
export interface SpotRow {
  readonly spots: number;
  /** From spot to spot. */
  readonly distance: number;
  /** 1/e² radius of the Gaussian with the effective area. */
  readonly radius: number;
  readonly diffusivity: number;
}

/**
 * What the other spots have left, `age` (s) after they passed, at the place that the middle one passed, over what that one
 * left there: Σ exp(−2(ks)²/(w²+8χt)) over the others, from the heat of lines that are written at the same time
 * (as {@link file://./heatPulse.ts}, summed along the lines). Half-space or plate; to 1e-15.
 */
export function neighbourHeat({ spots, distance, radius, diffusivity }: SpotRow, age: number): number {
  const spread = radius * radius + 8 * diffusivity * age;
  const exponent = (2 * distance * distance) / spread;
  const below = Math.floor((spots - 1) / 2);
  const above = spots - 1 - below;
  let sum = 0;
  for (let k = 1; k <= above && k * k * exponent < 40; k++)
    sum += (k <= below ? 2 : 1) * Math.exp(-k * k * exponent);
  return sum;
}
