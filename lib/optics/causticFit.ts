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
  /** How many points there are, how many within one Rayleigh length of the waist, how many beyond two. */
  readonly spread: { readonly points: number; readonly near: number; readonly far: number };
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
