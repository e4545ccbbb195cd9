import type { PulseCounts } from './pulseWindow.ts';

/**
 * What decides over a place, as logarithms of fluences (J/m²) that are held against a bound: −∞ where no pulse does. Each
 * pulse is set against its own bound by being divided by what incubation leaves of it.
 */
export interface DecisivePulses {
  /** To reach the lower bound, so that the place has enough. */
  readonly enough: number;
  /** To stay below the upper bound, for no pulse to be too strong. */
  readonly strongest: number;
  /** To stay below the lower bound, for the place not to get too many pulses. */
  readonly many: number;
}

/**
 * Reads them off the pulses of a place, weakest first, each of which comes `passes` times. The bounds with n pulses are
 * (n/pulsesLow)^(S−1) of those with `pulsesLow` or fewer: more pulses lower them where S is below 1, and raise them above.
 */
export function decisivePulses(
  counts: PulseCounts,
  passes: number,
): (weakestFirst: Float64Array) => DecisivePulses {
  const { pulsesLow, pulsesHigh, exponent } = counts;
  // The first pulse that counts, of those that come with passes before and after it.
  const firstEnough = Math.ceil(pulsesLow / passes) - 1;
  const firstMany = Math.floor(pulsesHigh / passes);
  if (exponent === 1) {
    const log = (pulses: Float64Array, i: number) =>
      i < pulses.length ? Math.log(pulses[pulses.length - 1 - i]!) : -Infinity;
    return (pulses) => ({
      enough: log(pulses, firstEnough),
      strongest: log(pulses, 0),
      many: log(pulses, firstMany),
    });
  }
  const eased = (n: number) => (exponent - 1) * Math.log(Math.max(1, n / pulsesLow));
  const number = (j: number) => (exponent < 1 ? (j + 1) * passes : j * passes + 1);
  const [bounds, boundsOfMany]: [number[], number[]] = [[], []];
  return (pulses) => {
    for (let j = bounds.length; j < pulses.length; j++) {
      bounds.push(eased(number(j)));
      boundsOfMany.push(eased(Math.max(number(j), pulsesHigh + 1)));
    }
    let [enough, strongest, many] = [-Infinity, -Infinity, -Infinity];
    for (let j = 0; j < pulses.length; j++) {
      const log = Math.log(pulses[pulses.length - 1 - j]!);
      const relative = log - bounds[j]!;
      if (j >= firstEnough && relative > enough) enough = relative;
      if (relative > strongest) strongest = relative;
      if (j >= firstMany) many = Math.max(many, log - boundsOfMany[j]!);
    }
    return { enough, strongest, many };
  };
}
