import { readSpotFile } from '../../lib/design/spotFile.ts';
import type { Case } from './sentenceCases.ts';

const uncertainties = { first: 40, exponent: 0.01, floor: 30 };
const law = (exponent: number, more: object = {}) => ({
  first: 2000,
  exponent,
  floor: 0,
  uncertainties,
  residualSumOfSquares: 1,
  degreesOfFreedom: 2,
  ...more,
});
const fitPin = (power: object, more: object = {}) => ({
  'threshold.incubationFit': {
    points: [1, 10, 100, 1000].map((pulses) => ({ pulses, fluence: 2000, uncertainty: 40 })),
    power,
    floored: null,
    better: 'power',
    reason: 'No floor shows.',
    ...more,
  },
});

/** Marks of a Gaussian of 15 µm for 1, 10 and 100 pulses with S = 0.85, without scatter but for rounding. */
const table = readSpotFile(
  [
    'E (uJ),D (um),N',
    ...[1, 10, 100].flatMap((N) =>
      [1.3, 1.8, 2.5, 4, 6].map((E) => {
        const threshold = 0.7 * N ** -0.15;
        return `${E},${(1e2 * Math.sqrt(2 * 2.25 * Math.log(E / threshold)) * 0.1).toFixed(2)},${N}`;
      }),
    ),
  ].join('\n'),
  'pulses.csv',
);

/** How far apart the two lines put the threshold, as a logarithm. */
const apart = (value: (id: string) => unknown) => {
  const { narrow, wide } = value('spot.takenAsGaussian') as Record<string, { fluenceFactor: number }>;
  return Math.abs(Math.log(narrow!.fluenceFactor / wide!.fluenceFactor));
};

export const incubationCases: readonly Case[] = [
  {
    says: 'incubationFitSaid',
    design: { 'threshold.fitModel': 'gaussian', 'threshold.spotTable': table },
    text: /^The thresholds of 3 numbers of pulses, 1 to 100, fall, with S = 0\.8(49|50|51) ± .* for one pulse \(standard uncertainties\)\. Thresholds at 3 numbers of pulses cannot tell a floor/,
    truth: () => true,
  },
  {
    says: 'incubationFitSaid',
    pins: fitPin(law(0.87)),
    text: /^The thresholds of 4 numbers of pulses, 1 to 1000, fall, with S = 0\.870 ± 0\.010 and 0\.2\sJ\/cm² ± 0\.004\sJ\/cm² for one pulse \(standard uncertainties\)\. No floor shows\.$/,
    truth: () => true,
  },
  {
    says: 'incubationFitSaid',
    pins: fitPin(law(1.05)),
    text: /1 to 1000, rise, with/,
    truth: () => true,
  },
  {
    says: 'incubationFitSaid',
    pins: fitPin(law(0.99)),
    text: /1 to 1000, change no more than they are uncertain \(S = 1 would describe them too\), with/,
    truth: () => true,
  },
  {
    says: 'incubationFitSaid',
    pins: fitPin(law(0.95), { floored: law(0.8, { floor: 900 }), better: 'floored' }),
    text: /S = 0\.800 .* for one pulse, down to a floor of 0\.09\sJ\/cm² ± 0\.003\sJ\/cm² \(standard/,
    truth: () => true,
  },
  {
    says: 'incubationFitSaid',
    pins: fitPin(law(0.9, { residualSumOfSquares: 20 })),
    text: /No floor shows\. But the thresholds scatter about the law by more than their uncertainties explain/,
    truth: () => true,
  },
  {
    says: 'takenAsGaussianSaid',
    design: { 'workpiece.z': 0.12e-3 },
    text: /^Whoever draws .* gets a threshold fluence of [01]\.\d+ times the true one and .* up to 3 times the least that marks, and .* up to 20 times, although .*depends on which energies/,
    truth: (value) => apart(value) > 0.03,
  },
  {
    says: 'takenAsGaussianSaid',
    design: { 'plate.designPhase': 1e-4, 'plate.stop': 'open' },
    text: /gets the threshold nearly right: 1 times the true one and a 1\/e² radius of 6\.56\sµm/,
    truth: () => true,
  },
  {
    says: 'takenAsGaussianSaid',
    pins: {
      'spot.takenAsGaussian': {
        narrow: { upTo: 3, fluenceFactor: 1.21, beamRadius: 1e-5 },
        wide: { upTo: 20, fluenceFactor: 1.2, beamRadius: 1e-5 },
      },
    },
    text: /1\.2 times the true one .* The two nearly agree, and both are wrong/,
    truth: () => true,
  },
];
