import type { NamedSpots } from '../../lib/measured/spotTable.ts';
import type { Random } from '../../lib/numerics/random.ts';
import { rounded } from './rounded.ts';

/** What marks are drawn for: a Gaussian's 1/e² radius on the workpiece, m, and its threshold energy, J. */
export interface MarkedWith {
  readonly radius: number;
  readonly thresholdEnergy: number;
}

/** Energies over the threshold energy: the lowest leaves a mark that is seen for certain. */
const lowest = 1.5;
const highest = 12;
const count = 9;
/** Standard deviation of a diameter read under the microscope, as a part of it. */
const scatter = 0.006;

/** A table of marks as they would be measured: D² = 2w² ln(E/E_th) (Liu 1982) with a little scatter. */
export function drawnMarks(random: Random, { radius, thresholdEnergy }: MarkedWith): NamedSpots {
  const rows = Array.from({ length: count }, (_, i) => {
    const energy = rounded(thresholdEnergy * lowest * (highest / lowest) ** (i / (count - 1)), 3);
    const squared = 2 * radius ** 2 * Math.log(energy / thresholdEnergy);
    const diameter = rounded(Math.sqrt(squared) * (1 + scatter * random.normal()), 3);
    const area = (Math.PI / 4) * diameter ** 2;
    return { row: i + 2, energy, area, diameters: [diameter, diameter] as const, pulses: 1 };
  });
  return { name: 'marks of this lesson', rows, bad: [], unmeasured: [], ignored: [] };
}
