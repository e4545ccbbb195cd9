import { lowestNear } from '../numerics/lowestNear.ts';
import type { AreaFit, AreaModel } from './areaFit.ts';
import { requireClosed } from './closedLogarithms.ts';
import type { Fitted } from './markFit.ts';
import { type MarkScatter, scatterParts, spreadOf } from './markScatter.ts';
import type { SpotMark } from './spotMark.ts';

/** Misfits of marks over threshold and zero, for a fixed scatter. */
export interface PlaneSearch {
  /** −2 ln of the likelihood for ln of the fluence and the zero, m. */
  misfit(logFluence: number, zero: number): number;
  /** The lowest for a zero, over fluences within 10 % of `near`. */
  alongFluence(near: number, zero: number): { readonly logFluence: number; readonly misfit: number };
}

/** Prepares the search; without a scatter each mark's own uncertainty counts. */
export function searchPlanes(
  seen: readonly SpotMark[],
  model: AreaModel,
  scatter: MarkScatter | null,
): PlaneSearch {
  const area = new Float64Array(seen.length);
  const slope = new Float64Array(seen.length);
  const given = Float64Array.from(seen, ({ areaUncertainty }) => areaUncertainty ?? 0);
  // Exact areas are told apart by a millionth of the largest.
  const least = 1e-6 * Math.max(...seen.map((mark) => mark.area));
  const misfit = (logFluence: number, zero: number) => {
    model.predict([logFluence, zero], area, slope);
    const spread = scatter === null ? given : spreadOf(scatter, scatterParts(area, slope));
    return seen.reduce((sum, mark, i) => {
      const sigma = Math.max(least, spread[i]!);
      return sum + 2 * Math.log(sigma) + ((mark.area - area[i]!) / sigma) ** 2;
    }, 0);
  };
  const alongFluence: PlaneSearch['alongFluence'] = (near, zero) => {
    const { at, value } = lowestNear((log) => misfit(log, zero), near, 0.1, 10, 1e-4);
    return { logFluence: at, misfit: value };
  };
  return { misfit, alongFluence };
}

/**
 * 95 % intervals: every zero whose misfit lies less than t² above the lowest, and every fluence that goes with one of
 * them. Walks outwards until three Rayleigh-length quarters' worth of steps in a row fit no more.
 */
export function spanOf(
  search: PlaneSearch,
  fit: AreaFit,
  step: number,
): { readonly zeroFitted: Fitted; readonly fluenceFitted: Fitted } {
  const [logFluence, zero] = fit.parameters as unknown as [number, number];
  const linear = [fit.along([0, 1]), fit.along([1, 0])] as const;
  const factor = linear[0].half / (linear[0].uncertainty || 1) || 2;
  const lowestMisfit = search.misfit(logFluence, zero);
  const pace = Math.min(step / 4, linear[0].half / 6 || step / 4);
  // ln fluence for a known zero.
  const [[a, b], [, c]] = fit.covariance as unknown as [Float64Array, Float64Array];
  const conditional = Math.sqrt(Math.max(0, a! - (b! * b!) / (c! || 1)));
  const zeros = [zero, zero];
  const logs = [logFluence - factor * conditional, logFluence + factor * conditional];
  for (const side of [-1, 1] as const) {
    let near = logFluence;
    let missed = 0;
    for (let k = 1; missed < Math.ceil((2 * step) / pace) && k < 200; k++) {
      const tried = zero + side * k * pace;
      const place = search.alongFluence(near, tried);
      const left = factor ** 2 - (place.misfit - lowestMisfit);
      if (left < 0) {
        missed++;
        continue;
      }
      missed = 0;
      near = place.logFluence;
      const reach = Math.sqrt(left) * conditional;
      zeros[side < 0 ? 0 : 1] = tried + (side * pace) / 2;
      logs[0] = Math.min(logs[0]!, near - reach);
      logs[1] = Math.max(logs[1]!, near + reach);
    }
  }
  const [low, high] = [Math.min(zeros[0]!, zero - pace / 2), Math.max(zeros[1]!, zero + pace / 2)];
  requireClosed(logFluence, ...logs);
  const fluence = Math.exp(logFluence);
  return {
    zeroFitted: { value: zero, uncertainty: (high - low) / 2 / factor, interval: [low, high] },
    fluenceFitted: {
      value: fluence,
      uncertainty: (fluence * (logs[1]! - logs[0]!)) / 2 / factor,
      interval: [Math.exp(logs[0]!), Math.exp(logs[1]!)],
    },
  };
}
