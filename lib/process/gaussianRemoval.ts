/** Peak over threshold at which a Gaussian removes most per energy, one branch: e² (closed form). */
export const gaussianBestRatio = Math.E ** 2;
/** The same for an ideal flat-top: e. */
export const flatTopBestRatio = Math.E;

/** Area in m² above threshold of a Gaussian: (πw²/2) ln(F0/F_th); `radius` w, 1/e², m; 0 up to the threshold. */
export function gaussianMarkArea(radius: number, ratio: number): number {
  return ratio > 1 ? ((Math.PI * radius * radius) / 2) * Math.log(ratio) : 0;
}

/** Diameter in m above threshold: D² = 2w² ln(F0/F_th) (J. M. Liu, Opt. Lett. 7, 196 (1982)); 0 up to the threshold. */
export function gaussianMarkDiameter(radius: number, ratio: number): number {
  return ratio > 1 ? radius * Math.sqrt(2 * Math.log(ratio)) : 0;
}

/** Peak over threshold of a mark: the inverse of {@link gaussianMarkDiameter}, exp(D²/(2w²)). */
export function gaussianRatioOfDiameter(radius: number, diameter: number): number {
  return Math.exp((diameter / radius) ** 2 / 2);
}

/** Volume in m³ of one pulse: (πw²δ/4) ln²(F0/F_th); `depth` δ in m. */
export function gaussianVolume(radius: number, depth: number, ratio: number): number {
  return ratio > 1 ? ((Math.PI * radius * radius * depth) / 4) * Math.log(ratio) ** 2 : 0;
}

/** Most volume per energy of a Gaussian, m³/J: 2δ/(e²F_th); `threshold` in J/m². */
export function gaussianBestVolumePerEnergy(depth: number, threshold: number): number {
  return (2 * depth) / (Math.E ** 2 * threshold);
}

/**
 * Most volume per energy of an ideal flat-top, m³/J: δ/(eF_th), e/2 = 1.359 times the Gaussian's
 * (G. Raciukaitis et al., J. Laser Micro/Nanoeng. 4, 186 (2009) (memory)).
 */
export function flatTopBestVolumePerEnergy(depth: number, threshold: number): number {
  return depth / (Math.E * threshold);
}
