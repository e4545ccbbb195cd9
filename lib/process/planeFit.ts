import type { Alternative } from './alternatives.ts';
import { type AreaFit, type AreaModel, describeAreas } from './areaFit.ts';
import type { AreaSurface } from './areaSurface.ts';
import type { FitCheck } from './fitCheck.ts';
import { type FitVerdict, judgeFit } from './fitVerdict.ts';
import type { Fitted } from './markFit.ts';
import { searchPlanes, spanOf } from './planeSearch.ts';
import { requireMarks } from './profileMarks.ts';
import type { SpotMark } from './spotMark.ts';
import type { Unmarked } from './unmarked.ts';

/** Marks that leave threshold and zero with a scatter: two parameters and two more. */
export const fewestMarks = 4;

/** Marks made with one spot; ladders with and without the plate are two of them. */
export interface MarksOfSpot {
  readonly marks: readonly SpotMark[];
  /** Areas of that spot in every plane. */
  readonly surface: AreaSurface;
  /** Peak fluence of the unshaped focus per energy of the table, J/m² per J: 2/(πw0²) times what losses leave. */
  readonly fluencePerEnergy: number;
}

interface Placed {
  readonly mark: SpotMark;
  readonly spot: MarksOfSpot;
}

/** Where on the scale of z the focus lies: plane z = direction · (reading − zero). */
export interface PlaneFit {
  readonly direction: 1 | -1;
  /** Reading at which the workpiece is in the focus, m. */
  readonly zero: number;
  /** ln of the threshold fluence in J/m². */
  readonly logFluence: number;
  /** Parameters are ln of the fluence, and the zero in m. */
  readonly fit: AreaFit;
  /** −2 ln of the likelihood: how well it fits, smaller is better; 9 less is 90 to 1. */
  readonly misfit: number;
  readonly seen: readonly SpotMark[];
  /** 95 % intervals of zero and ln fluence, and uncertainties, from how the misfit rises about its lowest place. */
  readonly zeroFitted: Fitted;
  readonly fluenceFitted: Fitted;
}

/**
 * Fits threshold and zero for one direction, from every zero between the ends of `range`, m, that looks possible: the
 * best first, then others in the order of their misfit. Where dips close, areas change so abruptly along z that the
 * misfit has many bends: zeros are tried one by one, and intervals hold all that fit within Student's t. Throws Problem
 * 'impossible' below four marks.
 */
export function fitPlanes(
  spots: readonly MarksOfSpot[],
  direction: 1 | -1,
  range: readonly [low: number, high: number],
  absolute = false,
): PlaneFit[] {
  const placed = spots.flatMap((spot) =>
    spot.marks.filter(({ area }) => area > 0).map((mark): Placed => ({ mark, spot })),
  );
  requireMarks(placed.length, fewestMarks);
  const seen = placed.map(({ mark }) => mark);
  const step = spots[0]!.surface.step;
  const predict = predictor(placed, direction);
  const found: PlaneFit[] = [];
  for (const start of likelyStarts(placed, predict, step, range)) {
    const model = { start, sizes: [1, step], predict };
    const { fit, search } = settle(seen, model, step, absolute);
    const [logFluence, zero] = fit.parameters as unknown as [number, number];
    if (found.some((other) => Math.abs(other.zero - zero) < step)) continue;
    const { zeroFitted, fluenceFitted } = spanOf(search, fit, step);
    const misfit = search.misfit(logFluence, zero);
    found.push({ direction, zero, logFluence, fit, misfit, seen, zeroFitted, fluenceFitted });
  }
  return found.sort((left, right) => left.misfit - right.misfit);
}

/** Lowest misfit near the start, with the scatter that the marks show there, three times over. */
function settle(seen: readonly SpotMark[], model: AreaModel, step: number, absolute: boolean) {
  let fit = describeAreas(seen, model, Float64Array.from(model.start), absolute);
  let search = searchPlanes(seen, model, fit.scatter);
  for (const fineness of [2, 6, 20]) {
    const [, zero] = fit.parameters as unknown as [number, number];
    let best = { zero, ...search.alongFluence(fit.parameters[0]!, zero) };
    for (let k = -8; k <= 8; k++) {
      const tried = zero + (k * 2 * step) / fineness;
      const place = { zero: tried, ...search.alongFluence(best.logFluence, tried) };
      if (place.misfit < best.misfit) best = place;
    }
    fit = describeAreas(seen, model, Float64Array.of(best.logFluence, best.zero), absolute, fit.spread);
    search = searchPlanes(seen, model, fit.scatter);
  }
  return { fit, search };
}

function predictor(placed: readonly Placed[], direction: 1 | -1): AreaModel['predict'] {
  return (parameters, area, slope) => {
    placed.forEach(({ mark, spot }, i) => {
      const z = direction * (mark.z - parameters[1]!);
      const level = parameters[0]! - Math.log(spot.fluencePerEnergy * mark.energy);
      area[i] = spot.surface.areaAt(z, level);
      slope[i] = spot.surface.slopeAt(z, level);
    });
  };
}

/** Thresholds and zeros on a grid whose diameters come nearest: the best of each valley along the zero, three at most. */
function likelyStarts(
  placed: readonly Placed[],
  predict: AreaModel['predict'],
  step: number,
  [low, high]: readonly [number, number],
): [number, number][] {
  const count = Math.max(1, Math.ceil((high - low) / (2 * step)));
  const area = new Float64Array(placed.length);
  const slope = new Float64Array(placed.length);
  const top = Math.max(...placed.map(({ mark, spot }) => Math.log(spot.fluencePerEnergy * mark.energy)));
  const valleys = Array.from({ length: count + 1 }, (_, i) => {
    const zero = low + ((high - low) * i) / count;
    let best = { squares: Number.POSITIVE_INFINITY, start: [top, zero] as [number, number] };
    for (let k = 0; k < 50; k++) {
      const start: [number, number] = [top - (k * Math.log(200)) / 50, zero];
      predict(start, area, slope);
      const squares = placed.reduce(
        (sum, { mark }, j) => sum + (Math.sqrt(Math.max(0, area[j]!)) - Math.sqrt(mark.area)) ** 2,
        0,
      );
      if (squares < best.squares) best = { squares, start };
    }
    return best;
  });
  const at = (i: number) => valleys[i]?.squares ?? Number.POSITIVE_INFINITY;
  return valleys
    .filter(({ squares }, i) => squares <= at(i - 1) && squares <= at(i + 1))
    .sort((left, right) => left.squares - right.squares)
    .slice(0, 3)
    .map(({ start }) => start);
}

/** Verdict on the best fit: size and steepness of the profile, `further` checks, and places without a mark. */
export function judgePlanes(
  spots: readonly MarksOfSpot[],
  { fit, seen, direction, zero, logFluence }: PlaneFit,
  alternatives: readonly Alternative[],
  further: readonly Omit<FitCheck, 'passed'>[] = [],
): FitVerdict {
  const size: Alternative = {
    kind: 'shape',
    change: Float64Array.from(fit.area),
    text: 'The marks are larger or smaller than the profile predicts in any plane: the beam, the plate or the magnification of the microscope may be another one.',
  };
  const unmarked = unmarkedOf(spots, fit, direction, zero, logFluence);
  return judgeFit(seen, fit, [size, ...alternatives], unmarked, further);
}

function unmarkedOf(
  spots: readonly MarksOfSpot[],
  fit: AreaFit,
  direction: 1 | -1,
  zero: number,
  logFluence: number,
): Unmarked[] {
  const least = Math.min(...fit.spread);
  return spots.flatMap((spot) =>
    spot.marks
      .filter(({ area }) => !(area > 0))
      .map((mark) => {
        const level = logFluence - Math.log(spot.fluencePerEnergy * mark.energy);
        const areaFor = (at: number) => spot.surface.areaAt(direction * (mark.z - at), level);
        const area = areaFor(zero);
        const { step } = spot.surface;
        const along = (areaFor(zero + step / 10) - areaFor(zero - step / 10)) / (step / 5);
        const slope = spot.surface.slopeAt(direction * (mark.z - zero), level);
        return { mark, area, spread: Math.hypot(least, fit.along([-slope, along]).uncertainty) };
      }),
  );
}
