import { derived } from '../graph/define.ts';
import { formatQuantity } from '../graph/units.ts';
import { Problem } from '../problem.ts';
import { repetitionRate } from './laser.ts';
import { maxPower, maxPulseEnergy, maxRepetitionRate } from './laserLimits.ts';
import { averagePower, energySource, usedPulseEnergy } from './losses.ts';
import { scanSpeed } from './scanInputs.ts';
import { maxSpeed } from './scannerInputs.ts';

/** A value beyond what a machine can give, with the input to change. */
function beyond(what: string, shown: string, most: string, input: string, next: string): Problem {
  return new Problem('impossible', `${what} is ${shown}, and no more than ${most} can be had. ${next}`, {
    input,
    value: shown,
    allowed: `up to ${most}`,
  });
}

// A hair, or a design set to the limit itself would be refused by rounding.
const above = (value: number, most: number) => value > most * (1 + 1e-9);

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
    const show = (value: number, unit: string, display: string) => formatQuantity(value, unit, display, 4);
    const energyInput = source === 'power' ? 'laser.typedPower' : 'laser.pulseEnergy';
    if (above(speed, maxSpeed))
      throw beyond(
        'The scan speed',
        show(speed, 'm/s', 'm/s'),
        show(maxSpeed, 'm/s', 'm/s'),
        scanSpeed.id,
        'Scan slower, or enter what your scanner can do.',
      );
    if (above(rate, maxRate))
      throw beyond(
        'The repetition rate',
        show(rate, 'Hz', 'kHz'),
        show(maxRate, 'Hz', 'kHz'),
        repetitionRate.id,
        'Lower it, or enter what your laser can give.',
      );
    if (above(energy, maxEnergy))
      throw beyond(
        'The pulse energy',
        show(energy, 'J', 'uJ'),
        show(maxEnergy, 'J', 'uJ'),
        energyInput,
        'Lower it, or enter what your laser can give.',
      );
    if (above(power, maxPower))
      throw beyond(
        'The average power, pulse energy times pulses per second,',
        show(power, 'W', 'W'),
        show(maxPower, 'W', 'W'),
        energyInput,
        'Lower the pulse energy or the repetition rate, or enter what your laser can give.',
      );
    return true;
  },
  shownAs: () => 'yes',
  formula:
    'v\\le v_\\text{max},\\ f_\\text{rep}\\le f_\\text{max},\\ E\\le E_\\text{max},\\ P\\le P_\\text{max}',
  source: 'definition',
});
