import { lowestNear } from '../numerics/lowestNear.ts';
import type { Progress } from '../numerics/progress.ts';
import { Problem } from '../problem.ts';
import type { PulseTrain } from './chordRemoval.ts';
import type { CuttingLight } from './cuttingLight.ts';
import { cutGroove } from './groove.ts';
import { mostSheetPasses } from './sheet.ts';

/** A sheet that is to be cut with least energy. */
export interface CheapestCut {
  /** Sampled as far out as the strongest pulse of `between` counts. */
  readonly light: CuttingLight;
  readonly train: Omit<PulseTrain, 'unit'>;
  /** Thickness of the sheet, m. */
  readonly thickness: number;
  /** Further passes once it is open. */
  readonly after: number;
  /** Units of fluence looked at, J/m²: from the first to the last. */
  readonly between: readonly [number, number];
  /** Passes·unit that is known to do; only what takes less is of interest. */
  readonly below?: number;
}

/** Energies tried between the ends, by equal factors. */
const tried = 12;
/** The factor of energy to which the best is found; passes follow it by no more than as much. */
const fineness = 0.02;

/**
 * The unit of fluence in J/m² with which a cut takes least energy for its length, and passes·unit there; undefined where
 * no energy tried goes through, or none with less than is known. Between two passes the opening is interpolated, so that whole passes make no steps.
 */
export function cheapestUnit(
  cut: CheapestCut,
  report?: Progress,
): { readonly unit: number; readonly cost: number } | undefined {
  const [low, high] = cut.between.map(Math.log) as [number, number];
  let least = cut.below ?? Number.POSITIVE_INFINITY;
  let asked = 0;
  const costOf = (logarithm: number): number => {
    const unit = Math.exp(logarithm);
    const cost = unit * passesThrough(cut, unit, least / unit);
    least = Math.min(least, cost);
    // 12 tries and some 11 sections.
    report?.(Math.min(1, ++asked / (2 * tried)));
    return cost;
  };
  // From the strongest down: few passes, after which weak pulses need not be followed for thousands.
  const half = (high - low) / 2;
  const { at, value } = lowestNear((x) => costOf(-x), -(low + half), half, tried / 2, fineness);
  return value < Number.POSITIVE_INFINITY ? { unit: Math.exp(-at), cost: value } : undefined;
}

/** Passes after which the sheet is cut, a broken number; Infinity where it needs more than `most`. */
function passesThrough(cut: CheapestCut, unit: number, most: number): number {
  const { light, train, thickness, after } = cut;
  const passes = Math.min(mostSheetPasses, Math.ceil(most - after));
  if (!(passes >= 1)) return Number.POSITIVE_INFINITY;
  try {
    const { deepest } = cutGroove(light, { ...train, unit, passes, until: thickness });
    const opens = deepest.findIndex((deep) => deep >= thickness);
    if (opens < 1) return Number.POSITIVE_INFINITY;
    const before = deepest[opens - 1]!;
    return opens - 1 + (thickness - before) / (deepest[opens]! - before) + after;
  } catch (error) {
    // A pulse too strong for a groove of steps: no cut.
    if (error instanceof Problem) return Number.POSITIVE_INFINITY;
    throw error;
  }
}
