import { correlationOf, type ResidualCorrelation } from '../numerics/correlatedResiduals.ts';
import { fitNonlinear } from '../numerics/leastSquares.ts';
import type { FitResult } from '../numerics/linearLeastSquares.ts';
import type { Progress } from '../numerics/progress.ts';
import { Problem } from '../problem.ts';
import type { GrooveSection } from './groove.ts';
import { depthAt } from './grooveShape.ts';
import { cachedSections, type SectionModel } from './sectionModel.ts';
import {
  type Cut,
  deviationsOf,
  type FittedSamples,
  type Parameters,
  type Scale,
  samplesBelow,
  scaleOf,
  sectionAt,
  writeDerivatives,
  writeModel,
} from './sectionSamples.ts';

/** A value with its standard uncertainty. */
export interface Estimate {
  readonly value: number;
  readonly uncertainty: number;
}

/** Depth per pulse and threshold by which the model cuts the measured groove. */
export interface SectionFit {
  /** δ of the first branch, m. */
  readonly depthPerPulse: Estimate;
  /** Threshold of one pulse, J/m². */
  readonly threshold: Estimate;
  /** Correlation of the two: near 1 a groove tells only what goes with what. */
  readonly correlation: number;
  /** Middle of the fitted groove in the samples' positions, m. */
  readonly centre: Estimate;
  /** Mean squared deviation inside the groove over that of the surface beside it: near 1 where the model is right. */
  readonly reducedChiSquare: number;
  /** Root mean square of the deviations inside the groove, m. */
  readonly residual: number;
  /** How many times larger correlation makes the variances, and over which length neighbours are correlated, m. */
  readonly inflation: number;
  readonly correlationLength: number;
  /** Samples fitted, those of them inside the groove, and those left out because they lie above the surface. */
  readonly used: number;
  readonly inside: number;
  readonly above: number;
  /** The fitted groove, at positions of the samples' own scale. */
  readonly fitted: GrooveSection;
  /** Measured less fitted depth of the samples used, m: positive where they are deeper. */
  readonly deviations: { readonly position: Float64Array; readonly depth: Float64Array };
}

/** What the search begins with. */
export interface SectionStart {
  readonly depthPerPulse: number;
  readonly threshold: number;
}

/** Thresholds that are tried to begin with, in parts of the one that is supposed. */
const firstTries = [1 / 8, 1 / 4, 1 / 2, 1, 2, 4];
/** Fewest samples inside the groove: two parameters, and what tells whether the model holds. */
const fewestInside = 8;
/** A promised gain below this part of the sum of squares moves a parameter by less than 0.01 of its uncertainty. */
const leastGain = 1e-8;
/** The first fit only finds what lies inside the groove and how it scatters there. */
const firstGain = 1e-3;
/** Computed grooves that a fit takes, for its progress: two fits of a few steps, four grooves each. */
const usualGrooves = 45;

/**
 * Fits the groove of `model` to measured samples: ln δ, ln F_th, the centre, and with them what is left of level and
 * tilt, so that their uncertainty counts. First with the noise of the surface, then with the scatter found inside the
 * groove there. Neighbouring deviations are correlated in real profiles: variances are multiplied by their integrated
 * autocorrelation. Throws Problem 'absent' where the model cuts no groove near `start`, 'impossible' where too few
 * samples lie in the groove or the fit does not settle.
 */
export function fitSection(
  samples: FittedSamples,
  model: SectionModel,
  start: SectionStart,
  report?: Progress,
): SectionFit {
  const used = samplesBelow(samples);
  const scale = scaleOf(used);
  let grooves = 0;
  const cut = cachedSections(model, () => report?.(Math.min(0.98, ++grooves / usualGrooves)));
  const begin = bestStart(used, cut, start, scale);
  const flat = new Float64Array(used.depth.length).fill(samples.noise);
  const first = settle(used, cut, begin, scale, flat, firstGain);
  const inside = insideOf(used, cut, first.parameters, scale);
  const deviations = deviationsOf(used, cut, first.parameters, scale);
  const residual = rootMeanSquare(deviations.filter((_, i) => inside[i]!));
  const weights = flat.map((noise, i) => (inside[i] ? Math.max(noise, residual) : noise));
  const fit = settle(used, cut, first.parameters, scale, weights, leastGain);
  return resultOf(used, cut, fit, scale, samples);
}

/** Samples where the fitted groove is deeper than nothing. */
function insideOf(used: FittedSamples, cut: Cut, p: Parameters, scale: Scale): boolean[] {
  const section = sectionAt(cut, p)!;
  const inside = Array.from(used.position, (x) => depthAt(section, x - p[2]! * scale.width) > 0);
  const count = inside.filter(Boolean).length;
  if (count >= fewestInside) return inside;
  throw new Problem(
    'impossible',
    `Only ${count} of the measured places lie inside the groove, where at least ${fewestInside} are needed to fit it. Measure it in finer steps.`,
    { value: String(count), allowed: `${fewestInside} or more` },
  );
}

/** The supposed values, or others beside them whose groove comes nearer to the measured one. */
function bestStart(used: FittedSamples, cut: Cut, start: SectionStart, scale: Scale): Parameters {
  let best: Parameters | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const part of firstTries) {
    const threshold = part * start.threshold;
    const groove = cut(start.depthPerPulse, threshold);
    const deepest = groove?.depth.reduce((most, value) => Math.max(most, value), 0) ?? 0;
    if (!(deepest > 0)) continue;
    const depthPerPulse = (start.depthPerPulse * scale.depth) / deepest;
    const p = Float64Array.of(Math.log(depthPerPulse), Math.log(threshold), 0, 0, 0);
    const squares = deviationsOf(used, cut, p, scale).reduce((sum, r) => sum + r * r, 0);
    if (!(squares < least)) continue;
    [best, least] = [p, squares];
  }
  if (best) return best;
  throw new Problem(
    'absent',
    'The model cuts no groove at the place of the measured one, whatever the threshold: the fluence is too low there. Set the energy, the speed and the plane to those the groove was made with.',
  );
}

function settle(
  used: FittedSamples,
  cut: Cut,
  start: Parameters,
  scale: Scale,
  uncertainties: Float64Array,
  gain: number,
): FitResult {
  try {
    return fitNonlinear({
      observed: used.depth,
      uncertainties,
      start,
      model: (p, into) => writeModel(used, cut, p, scale, into),
      derivatives: (p, into) => writeDerivatives(used, cut, p, scale, into),
      leastGain: gain,
      mostSteps: 60,
    });
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    throw new Problem(
      'impossible',
      'Depth per pulse and threshold do not settle on this groove: no values near those of today bring the computed groove onto the measured one. Check the passes of the measured groove, the energy, the speed and the plane.',
    );
  }
}

function rootMeanSquare(values: Float64Array): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

function resultOf(
  used: FittedSamples,
  cut: Cut,
  fit: FitResult,
  scale: Scale,
  samples: FittedSamples,
): SectionFit {
  const p = fit.parameters;
  const inside = insideOf(used, cut, p, scale);
  const deviations = deviationsOf(used, cut, p, scale);
  const within = deviations.filter((_, i) => inside[i]!);
  const places = used.position.filter((_, i) => inside[i]!);
  const residual = rootMeanSquare(within);
  const spread = Math.max(samples.noise, residual);
  const { inflation, length } = longerOf(
    correlationOf(within),
    correlationOf(deviations.map((value, i) => value / (inside[i] ? spread : samples.noise))),
  );
  const u = (j: number) => Math.sqrt(inflation * fit.covariance[j]![j]!);
  const [depthPerPulse, threshold] = [Math.exp(p[0]!), Math.exp(p[1]!)];
  const section = sectionAt(cut, p)!;
  const centre = p[2]! * scale.width;
  return {
    depthPerPulse: { value: depthPerPulse, uncertainty: depthPerPulse * u(0) },
    threshold: { value: threshold, uncertainty: threshold * u(1) },
    correlation: (inflation * fit.covariance[0]![1]!) / (u(0) * u(1)),
    centre: { value: centre, uncertainty: scale.width * u(2) },
    reducedChiSquare: ((residual / samples.noise) ** 2 * within.length) / (within.length - 3),
    residual,
    inflation,
    correlationLength: (length * (places.at(-1)! - places[0]!)) / (places.length - 1),
    used: used.depth.length,
    inside: within.length,
    above: samples.depth.length - used.depth.length,
    fitted: { y: section.y.map((place) => place + centre), depth: section.depth },
    deviations: { position: used.position, depth: deviations },
  };
}

/** The surface beside the groove has more samples of the instrument's own correlation, the groove those of its roughness. */
function longerOf(one: ResidualCorrelation, other: ResidualCorrelation): ResidualCorrelation {
  return one.inflation >= other.inflation ? one : other;
}
