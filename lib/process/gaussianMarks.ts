import { Problem } from '../problem.ts';
import type { Alternative } from './alternatives.ts';
import { type AreaFit, type AreaModel, fitAreas } from './areaFit.ts';
import { compareRadius, type ExpectedRadius } from './expectedRadius.ts';
import { judgeFit } from './fitVerdict.ts';
import { axesOf, checkAxes } from './markAxes.ts';
import { describeMarks, fittedLog, type MarkFit, mixedAlternatives } from './markFit.ts';
import type { SpotMark } from './spotMark.ts';

/** Threshold and beam of a Gaussian spot from its marks. */
export interface GaussianMarkFit extends MarkFit {
  /** Energy at the threshold, J, where the table gives it. */
  readonly thresholdEnergy: number;
  /** Peak fluence at the threshold, 2E_th/(πw²), J/m². */
  readonly thresholdFluence: number;
  /** 1/e² radius, for an elliptical beam √(wx·wy), m. */
  readonly beamRadius: number;
  /** Standard uncertainties of the three. */
  readonly uncertainties: ThreeNumbers;
  /** 95 % intervals of the three. */
  readonly intervals: {
    readonly thresholdEnergy: readonly [number, number];
    readonly thresholdFluence: readonly [number, number];
    readonly beamRadius: readonly [number, number];
  };
  /** Covariance of energy, fluence and radius in this order, 3 rows of 3. */
  readonly covariance: readonly Float64Array[];
}

interface ThreeNumbers {
  readonly thresholdEnergy: number;
  readonly thresholdFluence: number;
  readonly beamRadius: number;
}

export interface GaussianMarkOptions {
  /** True: each mark's `areaUncertainty` counts as it is. False (default): the scatter is found from the marks. */
  readonly absolute?: boolean;
  /** Part of the energy in the table that reaches the workpiece, 0 to 1; 1 when left out. */
  readonly transmission?: number;
  /** 1/e² radius that the beam should have in this plane, m, and its standard uncertainty. */
  readonly expectedRadius?: ExpectedRadius;
}

/**
 * D² = 2w² ln(E/E_th) (J. M. Liu, Opt. Lett. 7, 196 (1982)) fitted to the areas πD²/4 of marks at one z with one number
 * of pulses. An elliptical Gaussian leaves ellipses of area (π wx wy/2) ln(E/E_th): E_th and F_th = 2E_th/(π wx wy) hold
 * for it as they are, and areas alone can never show the ellipse; diameters along x and y do. Likewise a waist in another
 * plane only makes w larger, which the fit takes up: F_th stays right, and nothing but `expectedRadius` can tell.
 * Visible are a profile that is no Gaussian (curvature), other pulses or z among the marks, unequal axes.
 * Throws Problem 'impossible' below four marks or two energies, and where areas do not grow with energy.
 */
export function fitGaussianMarks(
  marks: readonly SpotMark[],
  options: GaussianMarkOptions = {},
): GaussianMarkFit {
  const seen = marks.filter(({ area }) => area > 0);
  requireSpread(seen);
  const fit = fitAreas(seen, gaussianModel(seen), options.absolute);
  const logEnergy = fit.parameters[0]! + Math.log(largest(seen, 'energy'));
  const logSize = fit.parameters[1]! + Math.log(largest(seen, 'area'));
  const size = Math.exp(logSize);
  const factor = options.transmission ?? 1;
  const thresholdEnergy = fittedLog(fit, logEnergy, [1, 0]);
  // F_th = 2E_th/(πw²) = E_th/(πw²/2).
  const thresholdFluence = fittedLog(fit, logEnergy - logSize + Math.log(factor), [1, -1]);
  const beamRadius = fittedLog(fit, 0.5 * (logSize - Math.log(Math.PI / 2)), [0, 0.5]);
  const placeOf = ({ energy, z }: SpotMark) => ({ level: Math.exp(logEnergy) / energy, z });
  const axes = axesOf(seen, placeOf, fit.scatter, () => ({ elliptical: () => 1.2 }));
  const unmarked = marks
    .filter(({ area }) => !(area > 0))
    .map((mark) => {
      const above = Math.log(mark.energy) - logEnergy;
      const direction = [-size, size * above];
      const least = Math.min(...fit.spread);
      return { mark, area: size * above, spread: Math.hypot(least, fit.along(direction).uncertainty) };
    });
  const { expectedRadius } = options;
  const checkRadius = expectedRadius
    ? [{ kind: 'radius' as const, ...compareRadius(beamRadius, fit.degreesOfFreedom, expectedRadius) }]
    : [];
  const further = [...checkAxes(axes), ...checkRadius];
  const verdict = judgeFit(seen, fit, alternativesOf(seen, fit, logEnergy, size), unmarked, further);
  const values = [thresholdEnergy, thresholdFluence, beamRadius];
  return {
    ...namedThree(values.map(({ value }) => value)),
    uncertainties: namedThree(values.map(({ uncertainty }) => uncertainty)),
    intervals: {
      thresholdEnergy: thresholdEnergy.interval,
      thresholdFluence: thresholdFluence.interval,
      beamRadius: beamRadius.interval,
    },
    covariance: covarianceOf(
      fit,
      values.map(({ value }) => value),
    ),
    ...describeMarks(seen, fit, unmarked.length, axes),
    ...verdict,
  };
}

function namedThree([thresholdEnergy, thresholdFluence, beamRadius]: readonly number[]): ThreeNumbers {
  return {
    thresholdEnergy: thresholdEnergy!,
    thresholdFluence: thresholdFluence!,
    beamRadius: beamRadius!,
  };
}

function requireSpread(seen: readonly SpotMark[]): void {
  const energies = new Set(seen.map(({ energy }) => energy)).size;
  if (seen.length >= 4 && energies >= 2) return;
  throw new Problem(
    'impossible',
    `The table gives ${seen.length} ${seen.length === 1 ? 'mark' : 'marks'} at ${energies} ${energies === 1 ? 'energy' : 'different energies'}, not enough for threshold and beam radius with an uncertainty: at least 4 marks at 2 energies are needed, and 8 energies with 3 repeats are good. Mark more spots.`,
    { value: `${seen.length} marks`, allowed: '4 or more at 2 or more energies' },
  );
}

function largest(marks: readonly SpotMark[], what: 'energy' | 'area'): number {
  return Math.max(...marks.map((mark) => mark[what]));
}

/** A = (πw²/2)(ln E − ln E_th), parameters ln E_th and ln(πw²/2) in the largest energy and area: units do not matter. */
function gaussianModel(marks: readonly SpotMark[]): AreaModel {
  const [top, widest] = [largest(marks, 'energy'), largest(marks, 'area')];
  const logs = marks.map(({ energy }) => Math.log(energy / top));
  const count = marks.length;
  const meanLog = logs.reduce((sum, log) => sum + log, 0) / count;
  const meanArea = marks.reduce((sum, { area }) => sum + area, 0) / count;
  const over = logs.reduce((sum, log, i) => sum + (log - meanLog) * marks[i]!.area, 0);
  const size = over / logs.reduce((sum, log) => sum + (log - meanLog) ** 2, 0);
  if (!(size > 0)) {
    throw new Problem(
      'impossible',
      'The marks do not grow with the energy, as marks above a threshold do. Check the columns of energy and diameter and their units, and leave out marks of another kind.',
    );
  }
  return {
    start: [meanLog - meanArea / size, Math.log(size / widest)],
    predict: (parameters, area, slope) => {
      slope.fill(widest * Math.exp(parameters[1]!));
      logs.forEach((log, i) => {
        area[i] = slope[i]! * (log - parameters[0]!);
      });
    },
  };
}

function alternativesOf(
  marks: readonly SpotMark[],
  fit: AreaFit,
  logEnergy: number,
  size: number,
): Alternative[] {
  const change = (of: (mark: SpotMark) => number) => Float64Array.from(marks, (mark) => size * of(mark));
  return [
    {
      kind: 'shape',
      change: change(({ energy }) => (Math.log(energy) - logEnergy) ** 2),
      text: 'Areas against the logarithm of the energy bend, where a Gaussian gives a straight line: the spot is no Gaussian.',
    },
    ...mixedAlternatives(marks, fit),
  ];
}

/** Covariance of energy, fluence and radius from that of ln E_th and ln(πw²/2). */
function covarianceOf(fit: AreaFit, values: readonly number[]): Float64Array[] {
  const directions = [
    [1, 0],
    [1, -1],
    [0, 0.5],
  ];
  return directions.map((left, i) =>
    Float64Array.from(directions, (right, k) => {
      const product = left.reduce(
        (sum, l, a) => sum + right.reduce((inner, r, b) => inner + l * r * fit.covariance[a]![b]!, 0),
        0,
      );
      return product * values[i]! * values[k]!;
    }),
  );
}
