/**
 * Roughness factor, true over flat area, of a sinusoidal profile by its arc length: peak-to-valley `depth` h above 0 or 0,
 * `period` Λ, both m. (2/π)·√(1+a²)·E(a²/(1+a²)) with a = πh/Λ and E the complete elliptic integral by its parameter.
 * 1 for a flat surface; 1 + a²/4 for shallow ripples, 2h/Λ for very deep ones.
 */
export function sinusoidRoughness(depth: number, period: number): number {
  const a = (Math.PI * depth) / period;
  return (2 / Math.PI) * Math.hypot(1, a) * ellipticSecond((a * a) / (1 + a * a));
}

/** Complete elliptic integral of the second kind for a parameter m of 0 up to 1, by the arithmetic-geometric mean, to 1e-14. */
function ellipticSecond(m: number): number {
  if (m >= 1) return 1;
  let [mean, geometric, part, sum] = [1, Math.sqrt(1 - m), 0.5, 0.5 * m];
  // Quadratic: eight steps reach the last bit for m up to 1 − 1e-15.
  for (let step = 0; step < 8; step++) {
    const difference = (mean - geometric) / 2;
    [mean, geometric] = [(mean + geometric) / 2, Math.sqrt(mean * geometric)];
    part *= 2;
    sum += part * difference * difference;
  }
  return (Math.PI / (2 * mean)) * (1 - sum);
}

/**
 * Contact angle on a rough surface that the liquid fills (R. N. Wenzel 1936), rad, from the `angle` on a flat one (rad)
 * and the roughness factor r of 1 or more; 0 or π where r·cos θ goes beyond ±1.
 */
export function wenzelAngle(angle: number, roughness: number): number {
  return Math.acos(Math.min(1, Math.max(-1, roughness * Math.cos(angle))));
}

/**
 * Contact angle of a drop on ridges with air beneath (A. B. D. Cassie and S. Baxter 1944), rad, where it touches `solid`,
 * a part of 0 to 1 of its base.
 */
export function cassieAngle(angle: number, solid: number): number {
  return Math.acos(solid * (Math.cos(angle) + 1) - 1);
}
