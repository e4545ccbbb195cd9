import { type CuttingLaw, countingLevel } from './cuttingLaw.ts';
import { removalLaw } from './removal.ts';

/** Depth in m that the next `count` pulses of `fluence` (J/m²) remove on a place that has counted `before`. */
export type GroupDepth = (fluence: number, before: number, count: number) => number;

/** Pulses of a group are taken one by one until so many have come, then in panels of this part of those before. */
const panelPart = 0.25;

/**
 * The cutting law asked millions of times: {@link file://./cuttingLaw.ts} `depthOfPulse` summed over the next pulses of one
 * fluence, of which `before` have been counted, which need not be a whole number. Of many pulses panels are taken at the
 * threshold in their middle: to 3e-3·(1 − S)·δ a pulse. Throws what {@link removalLaw} throws.
 */
export function groupDepth(law: CuttingLaw): GroupDepth {
  const { depth, incubation, second } = law;
  const { first, exponent, floor } = incubation;
  const level = countingLevel(law);
  removalLaw({ depth, threshold: first }, second);
  const steady = exponent === 1;
  const thresholdOf = (pulse: number) =>
    steady ? first : Math.max(level, floor + (first - floor) * pulse ** (exponent - 1));
  const single = (fluence: number, pulse: number) => {
    const threshold = thresholdOf(pulse);
    if (fluence <= threshold) return 0;
    const one = depth * Math.log(fluence / threshold);
    if (second === undefined || fluence <= second.threshold) return one;
    return Math.max(one, second.depth * Math.log(fluence / second.threshold));
  };
  return (fluence, before, count) => {
    if (steady) return count * single(fluence, 1);
    let [sum, done] = [0, before];
    const end = before + count;
    while (done < end) {
      const taken = Math.min(end - done, Math.max(1, Math.floor(panelPart * done)));
      sum += taken * single(fluence, done + (taken + 1) / 2);
      done += taken;
    }
    return sum;
  };
}
