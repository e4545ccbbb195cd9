/** What a pulse leaves behind and the workpiece that takes it; SI. */
export interface HeatInput {
  /** Heat of one pulse, or of all pulses of a burst, J. */
  readonly energy: number;
  /** 1/e² radius of the Gaussian in which it arrives, m. */
  readonly radius: number;
  /** Conductivity over density and specific heat, m²/s. */
  readonly diffusivity: number;
  /** Density times specific heat, J/(m³ K). */
  readonly heatCapacity: number;
  /** Thickness of a plate insulated behind, m; infinite, a half-space, where left out. */
  readonly thickness?: number;
}

/**
 * Rise of the surface per heat that an area has taken up evenly `age` ago, K m²/J: 1/(ρc√(πχt)) of a half-space without
 * losses, times what a back face without losses adds. `age` above 0.
 */
export function depthFactor(
  heat: Pick<HeatInput, 'diffusivity' | 'heatCapacity' | 'thickness'>,
  age: number,
): number {
  const { diffusivity, heatCapacity, thickness = Number.POSITIVE_INFINITY } = heat;
  const spread = Math.PI * diffusivity * age;
  return backFactor(thickness, diffusivity * age) / (heatCapacity * Math.sqrt(spread));
}

/**
 * What the insulated back of a plate multiplies the rise of a half-space by: 1 + 2Σ exp(−m²d²/(χt)), images of the heat
 * at distances 2md; at late times √(πχt)/d, the same sum turned over (Poisson). To 1e-15.
 */
export function backFactor(thickness: number, spread: number): number {
  const ratio = (thickness * thickness) / spread;
  // Before the heat came the spread is below 0, and the sum would never end.
  if (!(spread > 0) || ratio > 40) return 1;
  const early = ratio > Math.PI;
  const exponent = early ? ratio : (Math.PI * Math.PI) / ratio;
  let sum = 1;
  for (let m = 1; m * m * exponent < 40; m++) sum += 2 * Math.exp(-m * m * exponent);
  return early ? sum : sum * Math.sqrt(Math.PI / ratio);
}

/** Square of the 1/e² radius to which a heat input has spread, w² + 8χt, m². */
export function spreadSquare({ radius, diffusivity }: HeatInput, age: number): number {
  return radius * radius + 8 * diffusivity * age;
}

/**
 * Rise of the surface, K, `age` (s, above 0) after one heat input at the square distance `square` (m²) from it:
 * 2Q/(π(w²+8χt)) e^{−2r²/(w²+8χt)}/(ρc√(πχt)), no losses from the surface
 * (H. S. Carslaw & J. C. Jaeger, Conduction of Heat in Solids (memory); R. Weber et al., Opt. Express 22, 11312 (2014)).
 */
export function pulseRise(heat: HeatInput, square: number, age: number): number {
  // Ends of integrals reach half a pulse beyond a line, and so before its first pulse.
  if (!(age > 0)) return 0;
  const spread = spreadSquare(heat, age);
  const exponent = (2 * square) / spread;
  return exponent > 700
    ? 0
    : ((2 * heat.energy) / (Math.PI * spread)) * Math.exp(-exponent) * depthFactor(heat, age);
}
