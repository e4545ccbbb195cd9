import { derived } from '../graph/define.ts';
import type { Report, ValuesOf } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import { type Light, planeOfDefocus } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { type ChosenField, chooseField } from '../process/chosenField.ts';
import { bestSpeed } from '../process/scanLimits.ts';
import { largestModulation, leastInside } from './comparisonInputs.ts';
import { fieldWidth } from './depthInUse.ts';
import { light } from './focus.ts';
import { maxPower, maxPulseEnergy, maxRepetitionRate } from './laserLimits.ts';
import { opticsTransmission, plateTransmission } from './losses.ts';
import { checkCounts, noWindow, pulsesHigh, pulsesLow, windowHigh, windowLow } from './rippleWindow.ts';
import { acceleration, directions, fieldHeight, lineDelay, maxSpeed, turnRound } from './scannerInputs.ts';
import { incubationExponent } from './threshold.ts';

const demand = {
  low: windowLow,
  high: windowHigh,
  pulsesLow,
  pulsesHigh,
  exponent: incubationExponent,
  leastInside,
  largestModulation,
  optics: opticsTransmission,
  width: fieldWidth,
  height: fieldHeight,
  acceleration,
  maxSpeed,
  directions,
  turnRound,
  delay: lineDelay,
  maxRepetitionRate,
  maxPower,
  maxPulseEnergy,
};

type Demanded = ValuesOf<typeof demand>;

/** A search ends a little beside the focus where the focus is best, in Rayleigh lengths; far below what a hand can set. */
const inFocus = 1e-6;

/** The best setting of one of the two beams, or a Problem where none keeps what is asked. */
function bestOf(light: Light, plate: number, words: string, values: Demanded, report?: Report): ChosenField {
  const { low, high, pulsesLow, pulsesHigh, exponent, leastInside, largestModulation, optics, ...rest } =
    values;
  const { acceleration, maxSpeed, directions, turnRound, delay, ...laser } = rest;
  // The speed is searched for: that of the scan as it stands does not count.
  const motion = { speed: maxSpeed, acceleration, maxSpeed, directions, turnRound, delay };
  const { width, height } = laser;
  // All lines are as long, and their number does not change which speed is best.
  const oneLine = { width, height, lineSpacing: height, passes: 1, angle: 0, interlacing: 1, directions };
  const turningSpeed = bestSpeed(oneLine, motion);
  if (high <= low) throw noWindow();
  checkCounts({ pulsesLow, pulsesHigh });
  const found = chooseField(
    (defocus) => spotAt(light, planeOfDefocus(light, defocus)),
    {
      wanted: { low, high, pulsesLow, pulsesHigh, exponent },
      leastInside,
      largestModulation,
      transmission: optics * plate,
      machine: { ...laser, motion, turningSpeed },
    },
    report,
  );
  if (found) return { ...found, defocus: Math.abs(found.defocus) < inFocus ? 0 : found.defocus };
  throw new Problem(
    'absent',
    `${words} no setting was found that brings ${formatReadable(leastInside, '1', '%', 4)} of the field inside the window with a modulation of at most ${formatReadable(largestModulation, '1', '%', 3)}: ask for less, or widen the window.`,
    { input: 'comparison.leastInside' },
  );
}

const units = {
  defocus: '1',
  scale: '1',
  diameter: 'm',
  peakFluence: 'J/m^2',
  pulseEnergy: 'J',
  pulseSpacing: 'm',
  lineSpacing: 'm',
  speed: 'm/s',
  repetitionRate: 'Hz',
  power: 'W',
  limit: 'none',
  rate: 'm^2/s',
  fieldTime: 's',
  inside: '1',
  modulation: '1',
  energyPerArea: 'J/m^2',
  today: {
    pulseEnergy: 'J',
    pulseSpacing: 'm',
    lineSpacing: 'm',
    speed: 'm/s',
    repetitionRate: 'Hz',
    limit: 'none',
    rate: 'm^2/s',
  },
} as const;

const about =
  'Plane, size of the spot, peak fluence, pulse spacing, line spacing and speed with which one pass over the field is done soonest, such that the demanded part lies inside the window for ripples and the accumulated fluence is as even as demanded, within what scanner and laser can do; heat is not counted.';

/** A best setting in a few words. */
const inWords = ({ fieldTime, limit }: ChosenField) =>
  `${formatReadable(fieldTime, 's', 'auto:s', 3)}, limited by ${limit}`;

export const bestShaped = derived({
  id: 'comparison.shaped',
  name: 'the shaped beam at its own best',
  symbol: '\\text{best}',
  unit: units,
  about: `${about} With the plate.`,
  from: { light, plate: plateTransmission, ...demand },
  compute: ({ light, plate, ...values }, report) => bestOf(light, plate, 'With the plate', values, report),
  shownAs: (best) => inWords(best),
  formula: '\\max \\dot A(\\zeta,w_0,F_\\text{peak},p,\\Delta y,v)',
  source: 'search',
  heavy: 'search',
});

export const bestUnshaped = derived({
  id: 'comparison.unshaped',
  name: 'the unshaped beam at its own best',
  symbol: '\\text{best}_\\text{u}',
  unit: units,
  about: `${about} With the plate taken out and the stop left in.`,
  from: { light, ...demand },
  compute: ({ light, ...values }, report) =>
    bestOf(withPhaseScaled(light, 0), 1, 'With the plate taken out', values, report),
  shownAs: (best) => inWords(best),
  formula: '\\max \\dot A(\\zeta,w_0,F_\\text{peak},p,\\Delta y,v)',
  source: 'search',
  heavy: 'search',
});

const both = { shaped: bestShaped, unshaped: bestUnshaped };

export const timeGain = derived({
  id: 'scan.timeGain',
  name: 'gain in time with the plate',
  symbol: 'G_t',
  unit: '1',
  digits: 3,
  about:
    'Time for the field with the unshaped beam over that with the shaped one, each at its own best with the same window, the same part of the field inside and the same evenness.',
  from: both,
  compute: ({ shaped, unshaped }) => unshaped.fieldTime / shaped.fieldTime,
  formula: 't_\\text{field,u}/t_\\text{field}',
  source: 'search',
});

export const energyGain = derived({
  id: 'comparison.energyGain',
  name: 'gain in energy with the plate',
  symbol: 'G_E',
  unit: '1',
  digits: 3,
  about:
    'Laser energy per area of the field with the unshaped beam over that with the shaped one, each at its own best with the same part of the field inside the window; losses of the plate and the stop count.',
  from: both,
  compute: ({ shaped, unshaped }) => unshaped.energyPerArea / shaped.energyPerArea,
  formula: '(E/A)_\\text{u}/(E/A)',
  source: 'search',
});
