import { Problem } from '../problem.ts';
import type { Alternative } from './alternatives.ts';
import { type AreaFit, type AreaModel, fitAreas } from './areaFit.ts';
import { type AreaTable, pulseScatter, tabulateAreas } from './areaTable.ts';
import { judgeFit } from './fitVerdict.ts';
import { type AxesInPlanes, axesOf, checkAxes } from './markAxes.ts';
import { describeMarks, fittedLog, type MarkFit, mixedAlternatives } from './markFit.ts';
import type { SpotMark } from './spotMark.ts';
import { clearly } from './unmarked.ts';

/** Threshold from marks of a spot of known profile. */
export interface ProfileMarkFit extends MarkFit {
  /** Energy at the threshold, J, where the table gives it. */
  readonly thresholdEnergy: number;
  /** Peak fluence at the threshold, J/m². */
  readonly thresholdFluence: number;
  /** Standard uncertainties of both. */
  readonly uncertainties: { readonly thresholdEnergy: number; readonly thresholdFluence: number };
  /** 95 % intervals of both. */
  readonly intervals: {
    readonly thresholdEnergy: readonly [number, number];
    readonly thresholdFluence: readonly [number, number];
  };
}

export interface ProfileMarkOptions {
  /** True: each mark's `areaUncertainty` counts as it is. False (default): the scatter is found from the marks. */
  readonly absolute?: boolean;
  /** Extents for round and elliptical beams in each plane; where left out, a round spot is taken. */
  readonly axesAt?: AxesInPlanes;
  /**
   * Areas above levels relative to the peak for spots that it might be instead, such as half a Rayleigh length to both
   * sides: the marks are asked whether they lie towards one of them.
   */
  readonly others?: readonly ((level: number) => number)[];
}

/**
 * Marked areas against energy with a predicted profile of any shape, in one plane: A(E) = area{H/H_peak > E_th/E}
 * (M. Garcia-Lechuga & D. Grojo, Open Res. Europe 1:7 (2021)), one parameter. `areaAbove` is the area in m² above
 * `level` (0 to 1) times the peak, `peakPerEnergy` the peak fluence per energy of the table, J/m² per J: both hold the
 * plane, the plate and the losses. A spot that is larger or steeper than predicted, as in another plane, shows; so do
 * other pulses or z among the marks. Of planes half a Rayleigh length off, 56 to 89 in 100 tables of some 30 marks tell,
 * where the best of all tests would find 75 to 97 (tests); 0.75 off, nearly all do. An elliptical beam shows in the
 * diameters, in the areas only as far as it changes the profile. Throws Problem 'impossible' below three marks.
 */
export function fitProfileMarks(
  marks: readonly SpotMark[],
  areaAbove: (level: number) => number,
  peakPerEnergy: number,
  options: ProfileMarkOptions = {},
): ProfileMarkFit {
  const { others = [], ...rest } = options;
  return fitTabulated(marks, tabulateAreas(areaAbove), peakPerEnergy, {
    ...rest,
    others: others.map(tabulateAreas),
  });
}

/** The same from a table of areas that is kept elsewhere. */
export function fitTabulated(
  marks: readonly SpotMark[],
  table: AreaTable,
  peakPerEnergy: number,
  options: Omit<ProfileMarkOptions, 'others'> & { readonly others?: readonly AreaTable[] } = {},
): ProfileMarkFit {
  const { others = [], ...rest } = options;
  const plane = (other: AreaTable) => () => ({ table: other, peakPerEnergy });
  return fitInPlanes(marks, plane(table), { ...rest, others: others.map(plane) });
}

/** The profile that a mark was made with. */
export interface PlaneOfMark {
  readonly table: AreaTable;
  /** Peak fluence per energy of the table, J/m² per J. */
  readonly peakPerEnergy: number;
}

/** The same for marks in several known planes; the threshold energy is then that of the first mark's plane. */
export function fitInPlanes(
  marks: readonly SpotMark[],
  planeOf: (mark: SpotMark) => PlaneOfMark,
  options: Omit<ProfileMarkOptions, 'others'> & {
    readonly others?: readonly ((mark: SpotMark) => PlaneOfMark)[];
  } = {},
): ProfileMarkFit {
  const seen = marks.filter(({ area }) => area > 0);
  requireMarks(seen.length, 3);
  const fit = fitAreas(seen, profileModel(seen, planeOf), options.absolute);
  const logFluence = fit.parameters[0]! + Math.log(unitOf(seen, planeOf));
  const fluence = fittedLog(fit, logFluence, [1]);
  const energy = fittedLog(fit, logFluence - Math.log(planeOf(seen[0]!).peakPerEnergy), [1]);
  const above = (mark: SpotMark) => Math.log(mark.energy * planeOf(mark).peakPerEnergy) - logFluence;
  const placeOf = (mark: SpotMark) => ({ level: Math.exp(-above(mark)), z: mark.z });
  const axes = axesOf(seen, placeOf, fit.scatter, options.axesAt);
  const least = Math.min(...fit.spread);
  const { uncertainty } = fit.along([1]);
  const unmarked = marks
    .filter(({ area }) => !(area > 0))
    .map((mark) => {
      const { table } = planeOf(mark);
      const u = above(mark);
      const area = table.areaAt(u);
      // Where a ring lights up at once, the last slope says little of what a weaker pulse leaves.
      const weaker = table.areaAt(u - clearly * Math.hypot(uncertainty, pulseScatter));
      return { mark, area, spread: Math.hypot(least, (area - weaker) / clearly) };
    });
  const alternatives = [
    ...(options.others ?? []).map((other) => towards(seen, fit, other)),
    ...shapeAlternatives(seen, fit, above),
    ...mixedAlternatives(seen, fit),
  ];
  return {
    thresholdEnergy: energy.value,
    thresholdFluence: fluence.value,
    uncertainties: { thresholdEnergy: energy.uncertainty, thresholdFluence: fluence.uncertainty },
    intervals: { thresholdEnergy: energy.interval, thresholdFluence: fluence.interval },
    ...describeMarks(seen, fit, unmarked.length, axes),
    ...judgeFit(seen, fit, alternatives, unmarked, checkAxes(axes)),
  };
}

/** Refuses fewer than `least` marks. */
export function requireMarks(found: number, least: number): void {
  if (found >= least) return;
  throw new Problem(
    'impossible',
    `The table gives ${found} ${found === 1 ? 'mark' : 'marks'}, not enough for a threshold with an uncertainty: at least ${least} are needed, and 8 energies with 3 repeats are good. Mark more spots.`,
    { value: `${found}`, allowed: `${least} or more` },
  );
}

/** Highest peak fluence, J/m²: the unit of the parameter, so that other units do not matter. */
function unitOf(marks: readonly SpotMark[], planeOf: (mark: SpotMark) => PlaneOfMark): number {
  return Math.max(...marks.map((mark) => mark.energy * planeOf(mark).peakPerEnergy));
}

/** A(ln F_peak − ln F_th), parameter ln F_th. */
function profileModel(marks: readonly SpotMark[], planeOf: (mark: SpotMark) => PlaneOfMark): AreaModel {
  const tables = marks.map((mark) => planeOf(mark).table);
  const unit = unitOf(marks, planeOf);
  const logs = marks.map((mark) => Math.log((mark.energy * planeOf(mark).peakPerEnergy) / unit));
  const predict: AreaModel['predict'] = (parameters, area, slope) => {
    logs.forEach((log, i) => {
      area[i] = tables[i]!.areaAt(log - parameters[0]!);
      slope[i] = tables[i]!.slopeAt(log - parameters[0]!);
    });
  };
  // The best of 60 thresholds from a hundredth of the largest fluence up to it, by the equivalent diameters.
  const top = Math.max(...logs);
  const misfit = (logFluence: number) =>
    logs.reduce((sum, log, i) => {
      const area = Math.max(0, tables[i]!.areaAt(log - logFluence));
      return sum + (Math.sqrt(area) - Math.sqrt(marks[i]!.area)) ** 2;
    }, 0);
  const starts = Array.from({ length: 60 }, (_, i) => top - (i * Math.log(100)) / 60);
  const start = starts.reduce((best, next) => (misfit(next) < misfit(best) ? next : best));
  return { start: [start], predict };
}

function shapeAlternatives(
  marks: readonly SpotMark[],
  fit: { readonly area: Float64Array; readonly slope: Float64Array },
  above: (mark: SpotMark) => number,
): Alternative[] {
  return [
    {
      kind: 'shape',
      change: Float64Array.from(fit.area),
      text: 'The marks are larger or smaller than the profile predicts: the plane, the beam or the plate may be another one.',
    },
    {
      kind: 'shape',
      change: Float64Array.from(marks, (mark, i) => fit.slope[i]! * above(mark)),
      text: 'The marks grow with the energy faster or slower than the profile predicts: the plane, the beam or the plate may be another one.',
    },
  ];
}

/** The way from the fitted areas to those of another spot, fitted likewise. */
function towards(
  marks: readonly SpotMark[],
  fit: AreaFit,
  other: (mark: SpotMark) => PlaneOfMark,
): Alternative {
  const { area } = fitAreas(marks, profileModel(marks, other));
  return {
    kind: 'plane',
    change: area.map((value, i) => value - fit.area[i]!),
    oneWay: true,
    text: 'The marks lie off the profile as those of a neighbouring plane would: the workpiece may be in another plane.',
  };
}
