import { createRandom } from '../../lib/numerics/random.ts';

/** The true values behind the invented series of ripple periods, SI units, and what was added to them. */
export const periodsTruth = {
  /** Period with ten pulses on a place, and the part by which it falls with every tenfold number of pulses. */
  atTen: 968e-9,
  fallPerTenfold: 0.05,
  /** Scatter of each period, as a part of it. */
  scatter: 0.008,
  pulses: [10, 20, 50, 100, 200, 500, 1000],
};

/** Rows of pulses on a place and period in nm. */
export function drawPeriods(seed = 77): string[][] {
  const { atTen, fallPerTenfold, scatter, pulses } = periodsTruth;
  const random = createRandom(seed);
  return pulses.map((count) => {
    const exact = atTen * (1 - fallPerTenfold * Math.log10(count / 10));
    return [`${count}`, (1e9 * exact * (1 + scatter * random.normal())).toFixed(0)];
  });
}
