import { focusRadius, type Light, rayleighLength } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { Problem } from '../problem.ts';
import { tabulateAreas } from '../process/areaTable.ts';
import { fitGaussianMarks, type GaussianMarkFit } from '../process/gaussianMarks.ts';
import type { IncubationPoint } from '../process/incubation.ts';
import { fitMarksAndPlane, type PlaneMarkFit } from '../process/planeMarks.ts';
import { fitInPlanes, type PlaneOfMark, type ProfileMarkFit } from '../process/profileMarks.ts';
import type { SpotMark } from '../process/spotMark.ts';

/** What lies between the energy of the table and the workpiece: parts that pass, 0 to 1. */
export interface Passing {
  readonly optics: number;
  readonly plate: number;
}

/** Marks of the fewest pulses in the table, one where there are such. */
export function marksOfFewest(marks: readonly SpotMark[]): readonly SpotMark[] {
  const fewest = Math.min(...marks.map(({ pulses }) => pulses));
  return marks.filter(({ pulses }) => pulses === fewest);
}

/** Marks without the plate, as of a Gaussian of unknown radius. */
export function fitWithoutPlate(marks: readonly SpotMark[], { optics }: Passing): GaussianMarkFit {
  return fitGaussianMarks(marks, { transmission: optics });
}

/** Marks with the plate, each in the plane that the table gives; asked whether half a Rayleigh length off is better. */
export function fitWithPlate(marks: readonly SpotMark[], light: Light, passing: Passing): ProfileMarkFit {
  const known = new Map<number, PlaneOfMark>();
  const planeAt = (z: number): PlaneOfMark => {
    const found = known.get(z) ?? describePlane(light, z, passing);
    known.set(z, found);
    return found;
  };
  const half = rayleighLength(light) / 2;
  const others = [-half, half].flatMap((shift) => {
    try {
      for (const { z } of marks) planeAt(z + shift);
      return [(mark: SpotMark) => planeAt(mark.z + shift)];
    } catch (error) {
      // Too far from the focus to be asked.
      if (error instanceof Problem) return [];
      throw error;
    }
  });
  return fitInPlanes(marks, (mark) => planeAt(mark.z), { others });
}

function describePlane(light: Light, z: number, passing: Passing): PlaneOfMark {
  const spot = spotAt(light, z);
  return {
    table: tabulateAreas((level) => spot.areaAbove(level * spot.peak)),
    peakPerEnergy: spot.peak * fluencePerEnergy(light, passing),
  };
}

/** Peak fluence of the unshaped focus per energy of the table, J/m² per J. */
export function fluencePerEnergy(light: Light, { optics, plate }: Passing): number {
  return (2 * optics * plate) / (Math.PI * focusRadius(light) ** 2);
}

/** Marks with the plate where the z of the table may all be off by the same: two Rayleigh lengths at most. */
export function fitPlaneToo(marks: readonly SpotMark[], light: Light, passing: Passing): PlaneMarkFit {
  const length = rayleighLength(light);
  return fitMarksAndPlane(marks, (z) => spotAt(light, z), fluencePerEnergy(light, passing), {
    searched: [-2 * length, 2 * length],
    step: length / 16,
  });
}

/** The threshold for every number of pulses that has enough marks, ascending. */
export function thresholdsByPulses(
  marks: readonly SpotMark[],
  thresholdFrom: (marks: readonly SpotMark[]) => {
    readonly thresholdFluence: number;
    readonly uncertainties: { readonly thresholdFluence: number };
  },
): IncubationPoint[] {
  const counts = [...new Set(marks.map(({ pulses }) => pulses))].sort((a, b) => a - b);
  return counts.flatMap((pulses) => {
    try {
      const { thresholdFluence, uncertainties } = thresholdFrom(
        marks.filter((mark) => mark.pulses === pulses),
      );
      return [{ pulses, fluence: thresholdFluence, uncertainty: uncertainties.thresholdFluence }];
    } catch (error) {
      // Too few marks of this number.
      if (error instanceof Problem) return [];
      throw error;
    }
  });
}
