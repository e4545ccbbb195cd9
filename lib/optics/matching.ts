import type { Complex } from '../numerics/complex.ts';
import { findRoots } from '../numerics/roots.ts';
import { fieldOnAxis, irradianceOnAxis } from './onAxis.ts';
import type { Zone } from './zones.ts';

/** Step ratios κ looked at: the step from a twentieth of the beam to three times it. */
const searched: readonly [number, number] = [0.05, 3];

/** Zones in units of w for a two-zone plate of ratio κ; `stopPerStep` = R/a, undefined without a stop. */
export function twoZones(stepRatio: number, phase: number, stopPerStep?: number): Zone[] {
  const stop = stopPerStep === undefined ? Math.max(stepRatio, 6) + 1 : stopPerStep * stepRatio;
  return [
    { outer: stepRatio, phase },
    { outer: stop, phase: 0 },
  ];
}

/** What a beam can be matched for. */
export type MatchGoal = 'equal' | 'dark' | 'flattest';

/**
 * Step ratio κ = a/w for a goal, with the stop's radius fixed against the step (R/w moves with κ).
 * - equal: beam diameter = step diameter, κ = 1 (common practice, no source).
 * - dark: the axis in the focus is as dark as it gets; fully dark for φ = π: 2e^{−κ²} = 1 + e^{−X²}.
 *   For φ = π there is none behind a stop of R/a ≤ √2: the light through the step always outweighs the rest.
 * - flattest: no curvature on the axis in the focus; for φ = π: 2(1+κ²)e^{−κ²} = 1 + (1+X²)e^{−X²}.
 * Undefined where no κ between 0.05 and 3 does it.
 */
export function stepRatioFor(goal: MatchGoal, phase: number, stopPerStep?: number): number | undefined {
  if (goal === 'equal') return 1;
  return goal === 'dark' ? darkRatio(phase, stopPerStep) : flattestRatio(phase, stopPerStep);
}

/** dI(0,0)/dκ = 0 at a minimum: Re(U0* dU0/dκ), both closed forms; found to 1e-12 in κ. */
function darkRatio(phase: number, stopPerStep?: number): number | undefined {
  const axis = (ratio: number) => fieldOnAxis(twoZones(ratio, phase, stopPerStep), 0).u0;
  const c = Math.cos(phase) - 1;
  const s = Math.sin(phase);
  const k = stopPerStep ?? Number.POSITIVE_INFINITY;
  const slope = (ratio: number) => {
    // dU0/dκ = 2κ[(e^{iφ}−1)e^{−κ²} + (R/a)² e^{−(κR/a)²}], divided by 2κ.
    const inner = Math.exp(-ratio * ratio);
    const outer = Number.isFinite(k) ? k * k * Math.exp(-((ratio * k) ** 2)) : 0;
    const { re, im } = axis(ratio);
    return re * (c * inner + outer) + im * s * inner;
  };
  const minima = findRoots(slope, ...searched, 600).filter(
    (ratio) => slope(ratio + 1e-4) > slope(ratio - 1e-4),
  );
  const depth = (ratio: number) => Math.hypot(axis(ratio).re, axis(ratio).im);
  return minima.sort((a, b) => depth(a) - depth(b))[0];
}

/**
 * Least irradiance on the axis in the focus over all step ratios, relative to the same beam and stop without a step.
 * The share s of the amplitude that comes through the step falls as the beam grows, from 1 to (a/R)², here
 * `leastShare`, and the axis keeps |1 − (1 − e^{iφ})s|² = 1 − 2s(1−s)(1−cos φ): least at one half, or where s ends.
 */
export function darkestShare(phase: number, leastShare: number): number {
  const share = Math.max(0.5, leastShare);
  return 1 - 2 * share * (1 - share) * (1 - Math.cos(phase));
}

/**
 * dI/d(ϱ²) on the axis in the focus: 0 where the irradiance is level, above 0 in a dip. Relative to the unshaped,
 * unclipped beam; ϱ in its focus radii.
 */
export function axisCurvatureInFocus(stepRatio: number, phase: number, stopPerStep?: number): number {
  return irradianceOnAxis(twoZones(stepRatio, phase, stopPerStep), 0).slope;
}

/** The largest κ at which the irradiance in the focus has no curvature on the axis. */
function flattestRatio(phase: number, stopPerStep?: number): number | undefined {
  const curvature = (ratio: number) => axisCurvatureInFocus(ratio, phase, stopPerStep);
  return findRoots(curvature, ...searched, 600).at(-1);
}

/** Both sides of the why: the focal amplitude on the axis of the whole beam and of the centre alone, both without step. */
export interface AmplitudeParts {
  readonly whole: number;
  readonly centre: number;
}

/** Amplitudes on the axis in the focus for a two-zone plate with or without stop, relative to the unclipped beam. */
export function amplitudeParts(stepRatio: number, stopPerStep?: number): AmplitudeParts {
  const zones = twoZones(stepRatio, 0, stopPerStep);
  return { whole: fieldOnAxis(zones, 0).u0.re, centre: fieldOnAxis(zones.slice(0, 1), 0).u0.re };
}

/** U = whole − (1 − e^{iφ})·centre on the axis in the focus, behind a step of that phase. */
export function amplitudeAt({ whole, centre }: AmplitudeParts, phase: number): Complex {
  return { re: whole - (1 - Math.cos(phase)) * centre, im: Math.sin(phase) * centre };
}
