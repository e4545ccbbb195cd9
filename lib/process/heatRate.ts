import type { Progress } from '../numerics/progress.ts';
import { findRoot } from '../numerics/roots.ts';
import { type Hatch, lineCount } from './hatch.ts';
import { fieldRiseAt, type HeatedField, type HeatPlace, type RiseParts, roundsOf } from './heatField.ts';
import { hottestBehind } from './heatLine.ts';
import type { HeatInput } from './heatPulse.ts';
import { fieldTimes, lineTimes, overscan, type ScanMotion } from './scanTime.ts';

/** What a field is written with. */
export interface ScanSettings {
  readonly hatch: Hatch;
  readonly motion: ScanMotion;
  readonly pulseSpacing: number;
}

/** The field as its heat goes, written at `rate` (Hz) with pulse spacing and line spacing held: the speed follows. */
export function heatedField({ hatch, motion, pulseSpacing }: ScanSettings, rate: number): HeatedField {
  const moved = { ...motion, speed: pulseSpacing * rate };
  return {
    pulses: Math.max(1, Math.round(hatch.width / pulseSpacing)),
    pulseSpacing,
    rate,
    lines: lineCount(hatch, 0),
    lineSpacing: hatch.lineSpacing,
    lineTime: lineTimes(hatch.width, moved).total,
    interlacing: Math.max(1, hatch.interlacing),
    directions: hatch.directions,
    passes: hatch.passes,
    passTime: fieldTimes(hatch, moved).total / hatch.passes,
  };
}

/**
 * Whether pulses crowd where the scanner turns with the laser on, written at `rate` (Hz): where it turns within more than a
 * pulse spacing, so that more than two pulses come there besides those of a {@link heatedField}.
 */
export function crowdsAtTurns({ motion, pulseSpacing }: ScanSettings, rate: number): boolean {
  return motion.turnRound === 'inside' && overscan(pulseSpacing * rate, motion.acceleration) > pulseSpacing;
}

/** The hottest state, with where it is met. */
export interface Hottest extends RiseParts, HeatPlace {
  /** K. */
  readonly rise: number;
  readonly behind: number;
}

/** Where along a line is looked: both ends, where the line before turned round just now, and between them. */
const alongLine = [0, 1 / 256, 1 / 64, 1 / 16, 1 / 4, 1 / 2, 3 / 4, 15 / 16, 1];

/**
 * The highest rise just before a pulse, in the last round of the last pass: eleven places along a line, its last line, and
 * where rounds or passes came before also its middle line; with the spot at each, where the next pulse comes and where the
 * line being written is hottest. What lies between the places may be a few per cent higher.
 */
export function hottestRise(heat: HeatInput, field: HeatedField): Hottest {
  const { rounds, linesIn } = roundsOf(field);
  const last = linesIn(rounds - 1) - 1;
  const lines = rounds > 1 || field.passes > 1 ? [last, Math.floor(last / 2)] : [last];
  const near = [1, 10].filter((pulse) => pulse < field.pulses - 1);
  const pulses = [...alongLine.map((part) => Math.round(part * (field.pulses - 1))), ...near];
  let best: Hottest | undefined;
  for (const line of new Set(lines))
    for (const pulse of new Set(pulses)) {
      const hottest = hottestBehind(heat, field.pulseSpacing, field.rate, pulse);
      for (const behind of new Set([0, hottest])) {
        const parts = fieldRiseAt(heat, field, { pulse, line, behind });
        const rise = parts.own + parts.lines;
        if (best === undefined || rise > best.rise) best = { ...parts, rise, pulse, line, behind };
      }
    }
  return best!;
}

/** Doublings of the rate that are tried, upwards and downwards. */
const [doublings, halvings] = [40, 60];

/**
 * The lowest repetition rate, Hz, at which `riseAt` reaches `limit`, looked for from `rate` on in doublings; undefined where
 * it is not reached in forty of them. Where it is passed already, the nearest one below.
 */
export function rateReaching(
  riseAt: (rate: number) => number,
  limit: number,
  rate: number,
  report?: Progress,
): number | undefined {
  const over = (power: number) => riseAt(rate * 2 ** power) - limit;
  const step = over(0) > 0 ? -1 : 1;
  for (let tried = 1; tried <= (step > 0 ? doublings : halvings); tried++) {
    report?.((0.7 * tried) / doublings > 0.7 ? 0.7 : (0.7 * tried) / doublings);
    if (over(step * tried) > 0 === step > 0)
      return rate * 2 ** findRoot(over, step * tried - step, step * tried, 1e-10);
  }
  return undefined;
}
