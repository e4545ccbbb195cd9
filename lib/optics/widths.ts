import { requireAbove } from './beamChecks.ts';

/** Ways in which the width of a Gaussian beam is given. */
export type WidthName = 'radius' | 'diameter' | 'radiusAtE' | 'diameterAtE' | 'fullWidth' | 'deviation';

/** Each way as a multiple of the 1/e² irradiance radius w of a round Gaussian exp(−2r²/w²); exact. */
export const widthPerRadius: Readonly<Record<WidthName, number>> = {
  radius: 1,
  diameter: 2,
  radiusAtE: Math.SQRT1_2,
  diameterAtE: Math.SQRT2,
  fullWidth: Math.sqrt(2 * Math.LN2),
  deviation: 0.5,
};

/** True where a width is measured from edge to edge, false where from the axis to one edge. */
export const isAcross: Readonly<Record<WidthName, boolean>> = {
  radius: false,
  diameter: true,
  radiusAtE: false,
  diameterAtE: true,
  fullWidth: true,
  deviation: false,
};

/** Relative irradiance 0…1 at the place that a width marks: 1/e² = 0.1353, 1/e = 0.3679, ½, and e^{−1/2} at one σ. */
export function levelOf(name: WidthName): number {
  const places = widthPerRadius[name] / (isAcross[name] ? 2 : 1);
  return Math.exp(-2 * places * places);
}

/** Part of the energy 0…1 of a round Gaussian inside the circle that a width marks: 1 less the level there. */
export const energyInside = (name: WidthName): number => 1 - levelOf(name);

/** 1/e² radius w in m of a Gaussian whose width, in m and above 0, is given in that way. */
export function radiusFrom(name: WidthName, width: number): number {
  requireAbove('width', width, 'm');
  return width / widthPerRadius[name];
}

/** All widths in m of a Gaussian beam of 1/e² radius w, in m and above 0. */
export function widthsOf(radius: number): Readonly<Record<WidthName, number>> {
  requireAbove('1/e² radius', radius, 'm');
  const entries = Object.entries(widthPerRadius).map(([name, factor]) => [name, factor * radius]);
  return Object.fromEntries(entries) as Record<WidthName, number>;
}

/** Fluences of one pulse of a Gaussian beam, J/m². */
export interface GaussianFluences {
  /** On the axis: 2E/(πw²). */
  readonly peak: number;
  /** All of the energy over the circle of the 1/e² radius: E/(πw²), half the peak. */
  readonly mean: number;
  /** What falls into that circle, over it: (1 − e⁻²) E/(πw²). */
  readonly meanInside: number;
}

/** Fluences in J/m² of a pulse of `energy` in J in a Gaussian of 1/e² radius `radius` in m (above 0). */
export function gaussianFluences(energy: number, radius: number): GaussianFluences {
  requireAbove('1/e² radius', radius, 'm');
  const mean = energy / (Math.PI * radius * radius);
  return { peak: 2 * mean, mean, meanInside: (1 - Math.exp(-2)) * mean };
}

/** Pulse energy in J of a Gaussian of 1/e² radius `radius` in m (above 0) whose peak fluence is `peak` in J/m². */
export function energyOfPeak(peak: number, radius: number): number {
  requireAbove('1/e² radius', radius, 'm');
  return (peak * Math.PI * radius * radius) / 2;
}
