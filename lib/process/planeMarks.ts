import type { Progress } from '../numerics/progress.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { spotSurface } from './areaSurface.ts';
import { type AxesInPlanes, axesOf, checkAxes, type MarkPlace } from './markAxes.ts';
import { describeMarks, type MarkFit, mixedAlternatives } from './markFit.ts';
import { fitPlanes, judgePlanes, type MarksOfSpot, type PlaneFit } from './planeFit.ts';
import type { SpotMark } from './spotMark.ts';

/** Threshold and plane from marks of a spot whose profile is known in every plane. */
export interface PlaneMarkFit extends MarkFit {
  /** Fluence at the threshold, J/m². */
  readonly thresholdFluence: number;
  /** To be added to the z of every mark to get the plane it was made in, m. */
  readonly planeOffset: number;
  readonly uncertainties: { readonly thresholdFluence: number; readonly planeOffset: number };
  /** 95 % intervals, about the best plane alone. */
  readonly intervals: {
    readonly thresholdFluence: readonly [number, number];
    readonly planeOffset: readonly [number, number];
  };
  /** Other offsets that fit about as well (less than 6 in −2 ln of the likelihood, 20 to 1), with their thresholds. */
  readonly rivals: readonly { readonly planeOffset: number; readonly thresholdFluence: number }[];
}

export interface PlaneMarkOptions {
  readonly absolute?: boolean;
  /** Offsets searched, m, from and to. */
  readonly searched: readonly [number, number];
  /** Distance of tabulated planes, m: a sixteenth of the Rayleigh length. */
  readonly step: number;
  /** Extents for round and elliptical beams in each plane; where left out, a round spot is taken. */
  readonly axesAt?: AxesInPlanes;
  /** Hears the part done. */
  readonly progress?: Progress | undefined;
}

/**
 * Threshold and plane together from marked areas, for any spot (`spotOf` the spot in the plane z). Where the family of
 * planes is the same on both sides of the focus, marks of one z fit two planes: the other one is among `rivals`, and its
 * threshold is the same. Marks in several z, or at energies down to the threshold, tell planes apart.
 */
export function fitMarksAndPlane(
  marks: readonly SpotMark[],
  spotOf: (z: number) => Spot,
  fluencePerEnergy: number,
  options: PlaneMarkOptions,
): PlaneMarkFit {
  const surface = spotSurface(spotOf, options.step);
  return fitMarksOnSurface({ marks, surface, fluencePerEnergy }, options);
}

/** The same with areas that are tabulated already. */
export function fitMarksOnSurface(
  spot: MarksOfSpot,
  { searched: [low, high], absolute = false, axesAt, progress }: Omit<PlaneMarkOptions, 'step'>,
): PlaneMarkFit {
  const [best, ...others] = fitPlanes([spot], 1, [-high, -low], { absolute, progress }) as [
    PlaneFit,
    ...PlaneFit[],
  ];
  const { fit, seen } = best;
  const fluence = best.fluenceFitted;
  const { uncertainty, interval } = best.zeroFitted;
  const rivals = others
    .filter(({ misfit }) => misfit - best.misfit < 6)
    .map(({ zero, logFluence }) => ({ planeOffset: 0 - zero, thresholdFluence: Math.exp(logFluence) }));
  const placeOf = (mark: SpotMark): MarkPlace => {
    const z = mark.z - best.zero;
    const logPeak = Math.log(spot.fluencePerEnergy * mark.energy) + spot.surface.logPeakAt(z);
    return { level: Math.exp(best.logFluence - logPeak), z };
  };
  const axes = axesOf(seen, placeOf, fit.scatter, axesAt);
  const alternatives = mixedAlternatives(seen, fit).filter(({ kind }) => kind === 'pulses');
  return {
    thresholdFluence: fluence.value,
    planeOffset: 0 - best.zero,
    uncertainties: { thresholdFluence: fluence.uncertainty, planeOffset: uncertainty },
    intervals: { thresholdFluence: fluence.interval, planeOffset: [-interval[1], -interval[0]] },
    rivals,
    ...describeMarks(seen, fit, spot.marks.length - seen.length, axes),
    ...judgePlanes([spot], best, alternatives, checkAxes(axes)),
  };
}
