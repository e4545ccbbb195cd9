import { constantsAt, wavelengthsOf } from '../materials/opticalConstants.ts';
import { ripplePeriods, surfaceWave } from './surfaceWave.ts';

/** Modelled periods of one sample against the wavelength; columns of equal length. */
export interface PeriodCurve {
  /** Key of the sample. */
  readonly sample: string;
  /** m, in vacuum, ascending. */
  readonly wavelength: Float64Array;
  /** m, the shorter one where there are two. */
  readonly period: Float64Array;
  /** Whether a wave is bound to the surface there. */
  readonly bound: readonly boolean[];
}

/** How the light falls onto the surface. */
export interface Falling {
  readonly ambientIndex: number;
  /** rad. */
  readonly incidence: number;
  /** Of the wave vector of the ripples against the plane of incidence, rad. */
  readonly azimuth: number;
}

/** Wavelengths that are looked at, m: lasers that ripples are made with lie between. */
const [shortest, longest] = [250e-9, 1250e-9];
/** Steps over a sample: 5 nm where it is known over all of them; bends at the rows of the tables are rounded off by less than 1 nm. */
const steps = 200;

/**
 * Periods of a sample over the wavelengths at which it was measured, from 250 to 1250 nm; empty where it was measured
 * at none of them.
 */
export function periodCurve(sample: string, { ambientIndex, incidence, azimuth }: Falling): PeriodCurve {
  const [first, last] = wavelengthsOf(sample);
  const [from, to] = [Math.max(first, shortest), Math.min(last, longest)];
  const count = to > from ? steps + 1 : 0;
  const wavelength = Float64Array.from({ length: count }, (_, i) => from + ((to - from) * i) / steps);
  const waves = Array.from(wavelength, (at) => surfaceWave(constantsAt(sample, at), ambientIndex));
  return {
    sample,
    wavelength,
    period: wavelength.map((at, i) => ripplePeriods(at, waves[i]!.index, incidence, azimuth).short),
    bound: waves.map(({ bound }) => bound),
  };
}

/** Lowest and highest period of several samples by wavelength, m; all three NaN where fewer than two of them hold a bound wave. */
export interface PeriodSpread {
  readonly wavelength: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** What lies between the samples, every 5 nm; periods are straight between the places of a curve. */
export function spreadOfCurves(curves: readonly PeriodCurve[]): PeriodSpread {
  const places = steps + 1;
  const wavelength = Float64Array.from(
    { length: places },
    (_, i) => shortest + ((longest - shortest) * i) / steps,
  );
  const periods = Array.from(wavelength, (at) => curves.map((curve) => boundPeriod(curve, at)));
  const there = periods.map((all) => all.filter((period) => !Number.isNaN(period)));
  const end = (of: (...values: number[]) => number) =>
    Float64Array.from(there, (all) => (all.length < 2 ? Number.NaN : of(...all)));
  const low = end(Math.min);
  return {
    wavelength: wavelength.map((at, i) => (Number.isNaN(low[i]!) ? Number.NaN : at)),
    low,
    high: end(Math.max),
  };
}

/** Period of a curve at a wavelength, NaN beyond its ends or where no wave is bound to either side. */
function boundPeriod({ wavelength, period, bound }: PeriodCurve, at: number): number {
  const above = wavelength.findIndex((one) => one >= at);
  if (above < 0 || (above === 0 && wavelength[0]! > at)) return Number.NaN;
  const below = Math.max(0, above - 1);
  if (!bound[below] || !bound[above]) return Number.NaN;
  const step = wavelength[above]! - wavelength[below]!;
  const part = step === 0 ? 0 : (at - wavelength[below]!) / step;
  return period[below]! + part * (period[above]! - period[below]!);
}

/** Modelled periods against the angle of incidence; columns end where their wave does. */
export interface IncidenceCurves {
  /** rad, from 0 to 80°. */
  readonly angle: Float64Array;
  /** p polarisation, the wave that runs against the light, m. */
  readonly short: Float64Array;
  /** p polarisation, the wave that runs with it, m; as far as there is one. */
  readonly long: Float64Array;
  /** s polarisation, m; as far as there is one. */
  readonly across: Float64Array;
}

const [angles, steepest] = [161, (80 * Math.PI) / 180];

/** Periods for p and s polarisation of light of `wavelength` (m, vacuum) on a surface with a wave of `index` Re η. */
export function incidenceCurves(wavelength: number, index: number): IncidenceCurves {
  const angle = Float64Array.from({ length: angles }, (_, i) => (steepest * i) / (angles - 1));
  const ends = angle.findIndex((theta) => Math.sin(theta) >= index);
  const within = ends < 0 ? angle : angle.subarray(0, ends);
  const short = angle.map((theta) => ripplePeriods(wavelength, index, theta, 0).short);
  const long = within.map((theta) => ripplePeriods(wavelength, index, theta, 0).long!);
  const across = within.map((theta) => ripplePeriods(wavelength, index, theta, Math.PI / 2).short);
  return { angle, short, long, across };
}
