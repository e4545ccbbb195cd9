import { derived, ifThere } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { Progress } from '../numerics/progress.ts';
import type { HeatInput } from '../process/heatPulse.ts';
import { crowdsAtTurns } from '../process/heatRate.ts';
import type { Recipe } from '../process/scaleUp.ts';
import { type OwnRises, ownRises } from '../process/scaleUpHeat.ts';
import { riseLimit } from './heatInputs.ts';
import { heatInput } from './heatPulses.ts';
import { crowded } from './heatScan.ts';
import { maxRepetitionRate } from './laserLimits.ts';
import { largeAcceleration, largeMaxRepetitionRate, largeMaxSpeed } from './scaleUpInputs.ts';
import { recipe } from './scaleUpRecipe.ts';
import { acceleration, maxSpeed } from './scannerInputs.ts';

/** Heat of one spot over the repetition rate on one machine; SI. */
export interface HeatTable {
  readonly input: Required<HeatInput>;
  readonly own: OwnRises;
  readonly limit: number;
}

const unit = {
  input: { energy: 'J', radius: 'm', diffusivity: 'm^2/s', heatCapacity: 'J/(m^3*K)', thickness: 'm' },
  own: { rates: 'Hz', rises: 'K', reached: 'none' },
  limit: 'K',
} as const;

interface TableValues {
  readonly input: Required<HeatInput>;
  readonly recipe: Recipe;
  readonly acceleration: number;
  readonly maxSpeed: number;
  readonly limit: number;
}

function tableOf(
  { input, recipe, limit, ...moves }: TableValues,
  highest: number,
  report?: Progress,
): HeatTable {
  const { hatch, motion, pulseSpacing } = recipe;
  const settings = { hatch, pulseSpacing, motion: { ...motion, ...moves, speed: pulseSpacing * highest } };
  const own = ownRises(input, settings, { limit, highest }, report);
  if (crowdsAtTurns(settings, own.rates[0]!)) throw crowded(settings, own.rates[0]!);
  return { input, own, limit };
}

const about =
  'Highest rise just before a pulse that one spot alone leaves with the recipe held, at repetition rates from far below up to the highest of the laser, or to that at which it comes to the limit';
const text = {
  unit,
  formula: '\\Delta T_\\text{next}(f)',
  source: 'weber2014',
  heavy: 'search',
} as const;

const shown = ({ own: { rates, rises } }: HeatTable) =>
  `${formatReadable(rises[0]!, 'K', 'K', 3)} at ${formatReadable(rates[0]!, 'Hz', 'kHz', 3)}`;

export const heatTable = derived({
  ...text,
  id: 'scaleUp.heatTable',
  name: 'heat of one spot on the larger machine',
  symbol: '\\Delta T_\\text{own}(f)',
  about: `${about}, moved by the larger scanner.`,
  from: {
    input: heatInput,
    recipe,
    acceleration: largeAcceleration,
    maxSpeed: largeMaxSpeed,
    limit: riseLimit,
    highest: largeMaxRepetitionRate,
  },
  compute: ({ highest, ...values }, report): HeatTable => tableOf(values, highest, report),
  shownAs: (table) => shown(table),
});

export const todayHeatTable = derived({
  ...text,
  id: 'scaleUp.todayHeatTable',
  name: 'heat of one spot on today’s scanner',
  symbol: '\\Delta T_\\text{own,today}(f)',
  about: `${about}, today’s or the larger one, moved by today’s scanner.`,
  from: {
    input: heatInput,
    recipe,
    acceleration,
    maxSpeed,
    limit: riseLimit,
    highest: largeMaxRepetitionRate,
    todayHighest: maxRepetitionRate,
  },
  compute: ({ highest, todayHighest, ...values }, report): HeatTable =>
    tableOf(values, Math.max(highest, todayHighest), report),
  shownAs: (table) => shown(table),
});

const ifKnown = 'or nothing where nothing is known of the material’s heat or pulses crowd at the turns';

export const heatIfThere = ifThere<HeatTable | null>({
  id: 'scaleUp.heat',
  name: 'heat of one spot on the larger machine, where it is known',
  symbol: '\\Delta T_\\text{own}(f)',
  unit,
  about: `Heat of one spot on the larger machine, ${ifKnown}.`,
  of: heatTable,
  shownAs: (table) => (table === null ? 'not known' : shown(table)),
  waits: true,
});

export const todayHeatIfThere = ifThere<HeatTable | null>({
  id: 'scaleUp.todayHeat',
  name: 'heat of one spot on today’s scanner, where it is known',
  symbol: '\\Delta T_\\text{own,today}(f)',
  unit,
  about: `Heat of one spot on today’s scanner, ${ifKnown}.`,
  of: todayHeatTable,
  shownAs: (table) => (table === null ? 'not known' : shown(table)),
  waits: true,
});
