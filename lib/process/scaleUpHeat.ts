import type { Progress } from '../numerics/progress.ts';
import { findRoot } from '../numerics/roots.ts';
import { type Hatch, lineCount } from './hatch.ts';
import type { HeatInput } from './heatPulse.ts';
import { heatedField, hottestRise, rateReaching, type ScanSettings } from './heatRate.ts';
import { lineTimes, type ScanMotion } from './scanTime.ts';
import { otherSpotsRise } from './spotsHeat.ts';

/** Rise of one spot that writes the field alone, over the repetition rate; SI. */
export interface OwnRises {
  /** Hz, falling, and K. */
  readonly rates: readonly number[];
  readonly rises: readonly number[];
  /** Whether the first of them is at the limit; otherwise that lies beyond. */
  readonly reached: boolean;
}

/** What a spot leaves as heat, and what the surface may take; SI. */
export interface SpotHeat {
  readonly input: HeatInput;
  readonly own: OwnRises;
  /** K. */
  readonly limit: number;
  /** From spot to spot. */
  readonly distance: number;
}

/** Rise of the hottest place just before a pulse, K. */
export interface SpotsRise {
  /** From the lines of the spot itself. */
  readonly own: number;
  /** From the other spots: in the same scan, and in those before. */
  readonly beside: number;
  readonly before: number;
  readonly sum: number;
}

/** Halvings of the highest rate at which rises are worked out: between them they go nearly as a power of the rate. */
const halvings = [0, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 13];

/**
 * Rises of one spot at rates up to `highest` (Hz), or to that at which it reaches `limit` (K) alone, pulses and lines held:
 * as {@link hottestRise} of the field.
 */
export function ownRises(
  input: HeatInput,
  settings: ScanSettings,
  { limit, highest }: { readonly limit: number; readonly highest: number },
  report?: Progress,
): OwnRises {
  const riseAt = (rate: number) => hottestRise(input, heatedField(settings, rate)).rise;
  const found = riseAt(highest) > limit ? rateReaching(riseAt, limit, highest) : undefined;
  const rates = halvings.map((power) => (found ?? highest) * 2 ** -power);
  const rises = rates.map((rate, i) => {
    report?.(i / rates.length);
    return riseAt(rate);
  });
  return { rates, rises, reached: found !== undefined };
}

/**
 * Rise of one spot alone at that rate (Hz), K: a cubic through the logarithms at the four nearest rates of the table, to
 * 0.5 %; below the table, where heat comes from other spots if from any, as a power of the rate.
 */
export function ownRiseAt({ rates, rises }: OwnRises, rate: number): number {
  const last = rates.length - 1;
  const next = rates.findIndex((one) => one <= rate);
  const below = next < 0;
  const first = below ? last - 1 : Math.min(Math.max(0, next - 2), Math.max(0, last - 3));
  const places = rates.slice(first, first + (below ? 2 : 4)).map((one) => Math.log2(one / rate));
  let sum = 0;
  places.forEach((place, i) => {
    let weight = 1;
    places.forEach((other, k) => {
      if (k !== i) weight *= other / (other - place);
    });
    sum += weight * Math.log(rises[first + i]! / rises[0]!);
  });
  return rises[0]! * Math.exp(sum);
}

/** What the heat of all spots depends on. */
interface HeatedWork {
  readonly recipe: {
    readonly hatch: Hatch;
    readonly motion: Pick<ScanMotion, 'directions' | 'turnRound' | 'delay'>;
    readonly pulseSpacing: number;
  };
  readonly machine: { readonly spots: number; readonly acceleration: number; readonly maxSpeed: number };
}

/** Rise with all spots at that repetition rate (Hz), pulses and lines on their places. */
export function spotsRise({ recipe, machine }: HeatedWork, heat: SpotHeat, rate: number): SpotsRise {
  const { hatch, pulseSpacing } = recipe;
  const { spots, acceleration, maxSpeed } = machine;
  const motion = { ...recipe.motion, acceleration, maxSpeed, speed: pulseSpacing * rate };
  const { writing, total } = lineTimes(hatch.width, motion);
  const { beside, before } = otherSpotsRise(heat.input, {
    spots,
    distance: heat.distance,
    pulseSpacing,
    rate,
    width: hatch.width,
    height: hatch.height,
    lineSpacing: hatch.lineSpacing,
    directions: hatch.directions,
    lineTime: writing,
    scanTime: total,
    passes: hatch.passes,
    passTime: total * Math.ceil(lineCount(hatch, 0) / spots),
  });
  const own = ownRiseAt(heat.own, rate);
  return { own, beside, before, sum: own + beside + before };
}

/** Rates found for a table, by all else that they depend on: the same numbers of spots are asked for over and over. */
const known = new WeakMap<OwnRises, Map<string, number | undefined>>();

/**
 * Repetition rate, Hz, at which the surface reaches its limit with all spots; undefined where it does not up to the highest
 * rate of the table. To 1e-9.
 */
export function spotsHeatRate(work: HeatedWork, heat: SpotHeat): number | undefined {
  const { recipe, machine } = work;
  const { hatch, motion, pulseSpacing } = recipe;
  const { spots, acceleration, maxSpeed } = machine;
  const { own, ...surface } = heat;
  const key = JSON.stringify([hatch, motion, pulseSpacing, spots, acceleration, maxSpeed, surface]);
  const found = known.get(own) ?? new Map<string, number | undefined>();
  known.set(own, found);
  if (!found.has(key)) found.set(key, rateAtLimit(work, heat));
  return found.get(key);
}

/** As {@link spotsHeatRate}, worked out. */
function rateAtLimit(work: HeatedWork, heat: SpotHeat): number | undefined {
  const highest = heat.own.rates[0]!;
  // Close to straight over the logarithm of the rate.
  const over = (power: number) => Math.log(spotsRise(work, heat, highest * 2 ** power).sum / heat.limit);
  // One spot is at its limit there, and rounding must not tell.
  if (!(over(0) > 1e-9)) return heat.own.reached ? highest : undefined;
  let low = -1;
  while (over(low) > 0 && low > -400) low--;
  return highest * 2 ** findRoot(over, low, low + 1, 1e-10);
}
