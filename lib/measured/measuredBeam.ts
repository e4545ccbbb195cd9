/** What a note is about. */
export type BeamNoteKind =
  | 'saturated'
  | 'clipped'
  | 'not-round'
  | 'small-frame'
  | 'few-pixels'
  | 'not-gaussian'
  | 'offset-large'
  | 'dim'
  | 'noisy'
  | 'hot-pixels';

/** A sentence for the person, with the number that gave rise to it and the next step. */
export interface BeamNote {
  readonly kind: BeamNoteKind;
  readonly text: string;
}

/**
 * A beam measured from a picture. Lengths in metres, angles in radians, grey values in counts. Diameters are
 * 1/e²-equivalent second-moment diameters (4σ) unless a name says fit.
 */
export interface MeasuredBeam {
  /** Place of the beam's centre, from the upper left corner of the image, y downwards. */
  readonly centroid: { readonly x: number; readonly y: number };
  /** Diameter along the principal axis nearer to the image's x. */
  readonly diameterX: number;
  /** Diameter along the principal axis nearer to the image's y. */
  readonly diameterY: number;
  /** Angle of the first principal axis from the image's x towards its y (down), −π/4 to π/4. */
  readonly angle: number;
  /** √(diameterX · diameterY). */
  readonly equivalentDiameter: number;
  /** Smaller over larger diameter, 0 to 1; above 0.87 a beam counts as round (ISO 11146-1:2021, memory). */
  readonly ellipticity: number;
  /** Level at the centroid, and the change across the whole width and height of the image. */
  readonly background: { readonly level: number; readonly gradientX: number; readonly gradientY: number };
  /** Scatter of a single pixel where there is no beam (standard deviation). */
  readonly noise: number;
  /** Highest sample of the image, background included. */
  readonly peak: number;
  /** 1/e² diameters of a least-squares elliptical Gaussian, axes as above; undefined where none fits. */
  readonly fitDiameterX: number | undefined;
  readonly fitDiameterY: number | undefined;
  readonly fitAngle: number | undefined;
  /** √(fitDiameterX · fitDiameterY). */
  readonly fitDiameter: number | undefined;
  /**
   * Standard uncertainties in metres, from the noise of the dark part and from the background. Not in them:
   * the pixel pitch, photon noise, and light beyond the window, which the definition leaves out.
   */
  readonly uncertainty: {
    readonly diameterX: number;
    readonly diameterY: number;
    readonly equivalentDiameter: number;
  };
  /** What the person should know before using the numbers. */
  readonly notes: readonly BeamNote[];
}

const spoiling: readonly BeamNoteKind[] = ['saturated', 'clipped'];

/** Notes that tell against every number of the measurement: part of the beam is not in the picture. */
export function spoilingNotes({ notes }: Pick<MeasuredBeam, 'notes'>): readonly BeamNote[] {
  return notes.filter(({ kind }) => spoiling.includes(kind));
}
