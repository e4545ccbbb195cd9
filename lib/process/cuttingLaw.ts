import { type Incubation, thresholdAt } from './incubation.ts';
import { crossoverOf, depthAt, type RemovalBranch, removalLaw } from './removal.ts';

/** How much each pulse removes while pulse after pulse meets one place. */
export interface CuttingLaw {
  /** δ of the first branch in m: depth gained for each factor e of fluence, one pulse. */
  readonly depth: number;
  /** How the threshold of the first branch falls with the pulses counted on the place, J/m². */
  readonly incubation: Incubation;
  /** The thermal branch, whose threshold stays; none where one line is enough. */
  readonly second?: RemovalBranch;
}

/** A step of the law: from this fluence on (J/m²), depth grows by `rise` m more for each factor e. */
export interface CuttingStep {
  readonly from: number;
  readonly rise: number;
}

/**
 * Fluence in J/m² from which a pulse counts on a place, and below which nothing is removed however many came before:
 * the threshold of endless pulses, or 1/e² of that of one pulse where this is more (our choice, no source: without a
 * bound the faint tail of a spot would count pulses without end).
 */
export function countingLevel({ incubation }: CuttingLaw): number {
  return Math.max(incubation.floor, incubation.first * Math.exp(-2));
}

/** The branches for the N-th pulse counted on a place, N ≥ 1; the second never starts below the first. */
export function stepsAt(law: CuttingLaw, pulses: number): readonly CuttingStep[] {
  const threshold = Math.max(thresholdAt(law.incubation, pulses), countingLevel(law));
  const first = { depth: law.depth, threshold };
  if (law.second === undefined) return [{ from: threshold, rise: law.depth }];
  const crossover = crossoverOf([first, law.second]);
  const steps = [{ from: threshold, rise: law.depth }];
  if (crossover < Number.POSITIVE_INFINITY)
    steps.push({ from: crossover, rise: law.second.depth - law.depth });
  return steps;
}

/** Depth in m that the N-th pulse counted on a place removes at `fluence` (J/m², incident on the place as it slopes). */
export function depthOfPulse(law: CuttingLaw, fluence: number, pulses: number): number {
  const threshold = Math.max(thresholdAt(law.incubation, pulses), countingLevel(law));
  return depthAt(removalLaw({ depth: law.depth, threshold }, law.second), fluence);
}

/** Logarithms of where the steps of a law begin, by the number of pulses: what is asked millions of times in a groove. */
export interface StepTable {
  readonly rises: readonly number[];
  /** ln of `from` of step k for the N-th pulse, N ≥ 1; straight between sixteenths of a pulse, to (1 − S)/2000. */
  logarithmOf(step: number, pulses: number): number;
}

const perPulse = 16;
const tabulated = 512;
const tables = new WeakMap<CuttingLaw, StepTable>();

/** The table of a law, made once for one object. */
export function stepTable(law: CuttingLaw): StepTable {
  const known = tables.get(law) ?? makeTable(law);
  tables.set(law, known);
  return known;
}

function makeTable(law: CuttingLaw): StepTable {
  const rises = stepsAt(law, 1).map(({ rise }) => rise);
  const columns = rises.map(() => new Float64Array(tabulated * perPulse + 2));
  for (let i = 0; i < tabulated * perPulse + 2; i++) {
    stepsAt(law, 1 + i / perPulse).forEach(({ from }, step) => {
      columns[step]![i] = Math.log(from);
    });
  }
  const logarithmOf = (step: number, pulses: number) => {
    const at = (pulses - 1) * perPulse;
    if (at >= tabulated * perPulse) return Math.log(stepsAt(law, pulses)[step]!.from);
    const low = Math.floor(at);
    const column = columns[step]!;
    return column[low]! + (at - low) * (column[low + 1]! - column[low]!);
  };
  return { rises, logarithmOf };
}
