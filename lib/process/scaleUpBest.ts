import type { ChosenField } from './chosenField.ts';
import { type ScaledField, type ScaledWork, scaledField, shareOf } from './scaleUp.ts';

/** The best setting of a beam on the larger machine; SI. */
export interface ScaledBest extends ScaledField {
  readonly pulseEnergy: number;
  readonly pulseSpacing: number;
  readonly lineSpacing: number;
  /** Of the spot as scanned. */
  readonly diameter: number;
  /** Size of the pattern over that of the best setting; below 1 where a pulse has not enough energy for all spots. */
  readonly size: number;
}

/**
 * A best setting written with the spots, the laser and the scanner of `work`, in one pass of single pulses. Where a pulse of
 * `maxEnergy` (J) is not enough for all spots, spot and spacings are made smaller together: fluences and evenness stay. Spots
 * stand as far apart as in `work`, or their own diameter where that is more.
 */
export function scaledBest(best: ChosenField, work: ScaledWork, maxEnergy: number): ScaledBest {
  const { machine, recipe } = work;
  const serves = (maxEnergy * shareOf(machine)) / (machine.spots * best.pulseEnergy);
  const size = Math.min(1, Math.sqrt(serves));
  const pulseEnergy = best.pulseEnergy * size * size;
  const pulseSpacing = best.pulseSpacing * size;
  const lineSpacing = best.lineSpacing * size;
  const diameter = best.diameter * size;
  // Spots as wide as this need the room.
  const distance = Math.max(machine.distance, diameter);
  const hatch = { ...recipe.hatch, lineSpacing, passes: 1, angle: 0, interlacing: 1 };
  const field = scaledField({
    ...work,
    machine: { ...machine, distance },
    recipe: { ...recipe, hatch, pulseSpacing, energy: pulseEnergy, burst: 1 },
    heat: null,
  });
  return { ...field, pulseEnergy, pulseSpacing, lineSpacing, diameter, size };
}
