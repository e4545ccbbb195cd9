import { derived } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { pulseEnergy, repetitionRate } from './laser.ts';
import { maxPower, maxPulseEnergy, maxRepetitionRate } from './laserLimits.ts';
import { averagePower, energySource, typedPower, usedPulseEnergy } from './losses.ts';
import { scanSpeed } from './scanInputs.ts';
import { maxSpeed } from './scannerInputs.ts';

/** What is checked: its name, its value and the most of it, SI, its unit and that shown, the input to change and how. */
type Check = readonly [
  what: string,
  value: number,
  most: number,
  unit: string,
  shown: string,
  input: string,
  next: string,
];

const slower = 'Scan slower, or enter what your scanner can do.';
const less = 'Lower the pulse energy or the repetition rate, or enter what your laser can give.';

/** A design set to the limit itself must not be refused by rounding. */
const hair = 1e-9;

/** The problem of a value beyond what a machine can give. */
function beyond([what, value, most, unit, shown, input, next]: Check): Problem {
  const [is, can] = [value, most].map((one) => formatQuantity(one, unit, shown, 4)) as [string, string];
  return new Problem('impossible', `${what} is ${is}, and no more than ${can} can be had. ${next}`, {
    input,
    value: is,
    allowed: `up to ${can}`,
  });
}

export const checkScan = derived({
  id: 'scan.withinMachine',
  name: 'whether scanner and laser can do it',
  symbol: '\\text{possible}',
  unit: 'none',
  about:
    'Speed, repetition rate, pulse energy and average power against the highest that scanner and laser give.',
  from: {
    speed: scanSpeed,
    maxSpeed,
    rate: repetitionRate,
    maxRate: maxRepetitionRate,
    energy: usedPulseEnergy,
    maxEnergy: maxPulseEnergy,
    power: averagePower,
    maxPower,
    source: energySource,
  },
  compute: ({ speed, maxSpeed, rate, maxRate, energy, maxEnergy, power, maxPower, source }): boolean => {
    const energyInput = source === 'power' ? typedPower.id : pulseEnergy.id;
    const laser = 'Lower it, or enter what your laser can give.';
    const checks: readonly Check[] = [
      ['The scan speed', speed, maxSpeed, 'm/s', 'm/s', scanSpeed.id, slower],
      ['The repetition rate', rate, maxRate, 'Hz', 'kHz', repetitionRate.id, laser],
      ['The pulse energy', energy, maxEnergy, 'J', 'uJ', energyInput, laser],
      [
        'The average power, pulse energy times pulses per second,',
        power,
        maxPower,
        'W',
        'W',
        energyInput,
        less,
      ],
    ];
    for (const check of checks) if (check[1] > check[2] * (1 + hair)) throw beyond(check);
    return true;
  },
  shownAs: () => 'yes',
  formula:
    'v\\le v_\\text{max},\\ f_\\text{rep}\\le f_\\text{max},\\ E\\le E_\\text{max},\\ P\\le P_\\text{max}',
  source: 'definition',
});
