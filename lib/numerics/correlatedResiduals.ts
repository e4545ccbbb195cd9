/** How neighbouring residuals hang together. */
export interface ResidualCorrelation {
  /**
   * At least 1: as many neighbouring residuals tell as much as one alone, and variances of what is fitted to them are so
   * many times larger.
   */
  readonly inflation: number;
  /** Distance, in samples, at which the correlation has fallen to 1/e; 0 where neighbours are hardly correlated. */
  readonly length: number;
}

/** Window over the inflation: wide enough for a bias of 2e⁻⁵ of an exponential, narrow enough not to add up noise. */
const windows = 5;
/** Neighbours more alike than this are not told from one and the same. */
const highestCorrelation = 0.98;

/**
 * Correlation of residuals in the order of their places, mean taken off. The inflation is the integrated autocorrelation
 * 1 + 2Σρ_k, its sum cut at five times itself (A. Sokal, in Functional Integration (1997), p. 131 (memory)) and at a
 * quarter of the samples; or (1 + ρ)/(1 − ρ) of a process of first order where that is more, ρ from neighbours, with
 * (2 + 4ρ)/n added, which a fitted line takes off (F. H. C. Marriott & J. A. Pope, Biometrika 41, 390 (1954) (memory)).
 * A fit takes the slow part of the residuals with it, which the sum misses and the neighbours still show.
 */
export function correlationOf(residuals: Float64Array): ResidualCorrelation {
  const count = residuals.length;
  const mean = residuals.reduce((sum, r) => sum + r, 0) / count;
  const about = residuals.map((r) => r - mean);
  const variance = about.reduce((sum, r) => sum + r * r, 0);
  if (!(variance > 0)) return { inflation: 1, length: 0 };
  const rho = (lag: number) => {
    let sum = 0;
    for (let i = lag; i < count; i++) sum += about[i]! * about[i - lag]!;
    return sum / variance;
  };
  let inflation = 1;
  let length: number | undefined;
  let before = 1;
  for (let lag = 1; lag <= count / 4 && lag < windows * Math.max(1, inflation); lag++) {
    const now = rho(lag);
    inflation += 2 * now;
    if (length === undefined && now < Math.exp(-1)) {
      length = lag === 1 ? 0 : lag - 1 + (before - Math.exp(-1)) / (before - now);
    }
    before = now;
  }
  const first = Math.min(highestCorrelation, rho(1) + (2 + 4 * Math.max(0, rho(1))) / count);
  const ofFirstOrder = (1 + first) / (1 - first);
  return { inflation: Math.max(1, inflation, ofFirstOrder), length: length ?? Math.floor(count / 4) };
}
