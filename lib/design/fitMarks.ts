import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { collinsB, defocusAt, focusRadius, type Light, rayleighLength } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { tabulateAreas } from '../process/areaTable.ts';
import { compareRadius, radiusFromAreas } from '../process/expectedRadius.ts';
import { fitGaussianMarks, type GaussianMarkFit } from '../process/gaussianMarks.ts';
import type { IncubationPoint } from '../process/incubation.ts';
import { fitMarksAndPlane, type PlaneMarkFit } from '../process/planeMarks.ts';
import { fitInPlanes, type PlaneOfMark, type ProfileMarkFit } from '../process/profileMarks.ts';
import type { SpotMark } from '../process/spotMark.ts';
import { axesOfLight, keptByPlane, orUndefined } from './markPlanes.ts';

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

/** Part by which the beam radius in the focus of a design is off, as a rule: diameters and M² are seldom better known. */
const radiusUncertain = 0.05;

/** A doubt in this part of the tables of a beam that is as expected, at most. */
const doubtRate = 0.02;

/**
 * Marks without the plate, as of a Gaussian of unknown radius. With a `light` the radius is compared with that of its
 * beam in the plane of the marks, the plate taken out and the stop with it or not: another one is a doubt about beam, lens
 * or plane, while the fit describes the marks all the same and its threshold rests on its own radius.
 */
export function fitWithoutPlate(
  marks: readonly SpotMark[],
  { optics }: Passing,
  light?: Light,
): GaussianMarkFit {
  const fit = fitGaussianMarks(marks, { transmission: optics });
  const [z, ...others] = new Set(marks.map((mark) => mark.z));
  if (!light || z === undefined || others.length > 0 || fit.verdict === 'does not describe') return fit;
  const doubt = radiusDoubt(fit, () => gaussianRadius(light, z));
  // The spot behind the stop takes some 10 ms.
  const stopped = doubt && radiusDoubt(fit, () => radiusFromAreas(spotAt(withPhaseScaled(light, 0), z)));
  return stopped === undefined ? fit : { ...fit, doubt: stopped };
}

/** 1/e² radius of the beam in the plane z without plate and stop, m. */
export function gaussianRadius(light: Light, z: number): number {
  const width = Math.hypot(light.beamPropagationRatio, defocusAt(light, z));
  return (focusRadius(light) * width * collinsB(light, z)) / light.focalLength;
}

/** What tells against that radius, if anything; nothing where it cannot be worked out, too far from the focus. */
function radiusDoubt(fit: GaussianMarkFit, radius: () => number): string | undefined {
  const expected = orUndefined(radius);
  if (expected === undefined) return undefined;
  const found = { value: fit.beamRadius, uncertainty: fit.uncertainties.beamRadius };
  const uncertainty = radiusUncertain * expected;
  const { probability, text } = compareRadius(found, fit.used - 2, { value: expected, uncertainty });
  return probability < doubtRate ? text : undefined;
}

/**
 * Fits marks made with the plate, each in the plane that the table gives; asked whether half a Rayleigh length off is
 * better, and whether extents along x and y are those of a round beam. What it has worked out of the light, it keeps for
 * the next marks.
 */
export function fitterWithPlate(
  light: Light,
  passing: Passing,
): (marks: readonly SpotMark[]) => ProfileMarkFit {
  const planeAt = keptByPlane((z) => describePlane(light, z, passing));
  const axesAt = axesOfLight(light);
  const half = rayleighLength(light) / 2;
  return (marks) => {
    const others = [-half, half].flatMap((shift) => {
      const planes = orUndefined(() => marks.map(({ z }) => planeAt(z + shift)));
      return planes ? [(mark: SpotMark) => planeAt(mark.z + shift)] : [];
    });
    return fitInPlanes(marks, (mark) => planeAt(mark.z), { others, axesAt });
  };
}

/** The spot in a plane of the table; where the light cannot be asked there, it is the table's z that is meant. */
function spotOfTable(light: Light, z: number): Spot {
  try {
    return spotAt(light, z);
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const at = formatReadable(z, 'm', 'mm', 4);
    throw new Problem(
      error.kind,
      `The table has marks at z = ${at}, where nothing can be predicted: most often because that is more than 12 Rayleigh lengths from the focus. If its z is a reading of the stage, find the reading in the focus with a ladder and take it off: z counts from the focal plane here.`,
      { value: at },
    );
  }
}

function describePlane(light: Light, z: number, passing: Passing): PlaneOfMark {
  const spot = spotOfTable(light, z);
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
    axesAt: axesOfLight(light),
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
