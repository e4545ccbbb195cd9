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
const halvings = [
  ...Array.from({ length: 16 }, (_, i) => i / 4),
  ...Array.from({ length: 8 }, (_, i) => 4 + i / 2),
  ...Array.from({ length: 13 }, (_, i) => 8 + i),
];

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

/** Rise of one spot alone at that rate (Hz), K; between the rates of the table as a power of the rate, to 0.3 %. */
export function ownRiseAt({ rates, rises }: OwnRises, rate: number): number {
  const next = rates.findIndex((one) => one <= rate);
  const i = Math.max(1, next < 0 ? rates.length - 1 : next);
  const part = Math.log(rate / rates[i]!) / Math.log(rates[i - 1]! / rates[i]!);
  return rises[i]! * (rises[i - 1]! / rises[i]!) ** part;
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

/**
 * Repetition rate, Hz, at which the surface reaches its limit with all spots; undefined where it does not up to the highest
 * rate of the table. To 1e-9.
 */
export function spotsHeatRate(work: HeatedWork, heat: SpotHeat): number | undefined {
  const highest = heat.own.rates[0]!;
  const over = (power: number) => spotsRise(work, heat, highest * 2 ** power).sum / heat.limit - 1;
  // One spot is at its limit there, and rounding must not tell.
  if (!(over(0) > 1e-9)) return heat.own.reached ? highest : undefined;
  let low = -1;
  while (over(low) > 0 && low > -400) low--;
  return highest * 2 ** findRoot(over, low, low + 1, 1e-11);
}
