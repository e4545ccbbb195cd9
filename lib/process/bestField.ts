import type { Progress } from '../numerics/progress.ts';
import { portion } from '../numerics/progress.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { type ChordTable, tabulateChords } from './chordTable.ts';
import { widestPulseSpacing } from './densePulses.ts';
import {
  bestSize,
  type FastestField,
  type FieldMachine,
  type FieldSetting,
  fastestAt,
} from './fieldMachine.ts';
import { type FieldParts, partsInWindow } from './fieldWindow.ts';
import type { PulseWindow } from './pulseWindow.ts';

/** The spots of a beam by plane, ζ in Rayleigh lengths; metres as the lens makes them today. */
export type SpotFamily = (defocus: number) => Spot;

/** What every field must keep, with whatever beam. */
export interface FieldDemand {
  readonly window: PulseWindow;
  /** Least part of the field inside the window. */
  readonly leastInside: number;
  /** Largest modulation of the accumulated fluence across the lines, (max − min)/(max + min). */
  readonly largestModulation: number;
  /** That modulation for a spot and a line spacing in m. */
  modulation(spot: Spot, lineSpacing: number): number;
  /** Part of the pulse energy that reaches the stop. */
  readonly transmission: number;
  readonly machine: FieldMachine;
}

/** Where a search stands: plane, line spacing over the spot's diameter, peak fluence over the upper bound. */
export interface FieldPlace {
  readonly defocus: number;
  readonly spacing: number;
  readonly peak: number;
}

/** A place that keeps the demand, with its pulse spacing as far as that goes. */
export interface FoundField extends FieldPlace {
  readonly setting: FieldSetting;
  readonly fastest: FastestField;
}

/** Diameter as scanned: that of the Gaussian of the same effective area, 2√(2A_eff/π), m. */
export function scannedDiameter(spot: Spot): number {
  return 2 * Math.sqrt((2 * spot.effectiveArea) / Math.PI);
}

/** The setting of a place with that pulse spacing. */
function settingOf(spot: Spot, demand: FieldDemand, place: FieldPlace, pulseSpacing: number): FieldSetting {
  const diameter = scannedDiameter(spot);
  const energy =
    (place.peak * demand.window.high * spot.effectiveArea) / (spot.transmission * demand.transmission);
  return { pulseSpacing, lineSpacing: place.spacing * diameter, energy, diameter };
}

/** Parts of the field that a setting writes. */
export function partsOfSetting(
  spot: Spot,
  demand: FieldDemand,
  peak: number,
  { pulseSpacing, lineSpacing }: FieldSetting,
): FieldParts {
  const unit = (peak * demand.window.high) / spot.peak;
  return partsInWindow(spot, unit, { pulseSpacing, lineSpacing, passes: 1 }, demand.window);
}

/** Planes, line spacings over the diameter, and peaks over the upper bound that are looked at first. */
const planes = Array.from({ length: 25 }, (_, i) => i * 0.05);
const spacings = Array.from({ length: 26 }, (_, i) => 0.1 * 1.13 ** i);
const peakSteps = 10;
/** Settings from which the search goes on, and its steps: plane, logarithm of the spacing, peak. */
const starts = 2;
const steps = [0.025, 0.06, 0.012] as const;
const halvings = 3;

/**
 * The fastest way to write a field with a beam: plane, peak fluence, line spacing, pulse spacing, size of the spot and
 * speed, such that the demand is kept. First planes, spacings and peaks on a grid with pulses counted by lengths of line,
 * then steps from the best of them with the field counted pulse by pulse ({@link partsInWindow}). Null where nothing keeps
 * the demand. Rate to about one per cent (tests compare with a brute-force scan around it).
 */
export function bestField(family: SpotFamily, demand: FieldDemand, report?: Progress): FoundField | null {
  const spots = new Map<number, Spot>();
  const spotAt = (defocus: number) => {
    const known = spots.get(defocus) ?? family(defocus);
    spots.set(defocus, known);
    return known;
  };
  const rough = roughly(spotAt, demand, portion(report, 0, 0.5));
  let best: FoundField | null = null;
  rough.slice(0, starts).forEach((start, i) => {
    const from = 0.5 + (0.5 * i) / starts;
    const found = polish(spotAt, demand, start, portion(report, from, from + 0.5 / starts));
    if (found && (best === null || found.fastest.rate > best.fastest.rate)) best = found;
  });
  report?.(1);
  return best;
}

type Rough = FieldPlace & { readonly rate: number; readonly pulseSpacing: number };

/** Places on the grid that keep the demand as far as can be seen roughly, the fastest first, one a plane. */
function roughly(spotAt: SpotFamily, demand: FieldDemand, report?: Progress): Rough[] {
  const found: Rough[] = [];
  planes.forEach((defocus, i) => {
    const spot = spotAt(defocus);
    const table = tabulateChords(spot, 1.2 * scannedDiameter(spot));
    const best = bestOfPlane(spot, table, defocus, demand);
    if (best) found.push(best);
    report?.((i + 1) / planes.length);
  });
  return found.sort((a, b) => b.rate - a.rate);
}

/** The fastest place of one plane on the grid. */
function bestOfPlane(spot: Spot, table: ChordTable, defocus: number, demand: FieldDemand): Rough | null {
  const { window, leastInside, largestModulation, machine } = demand;
  const diameter = scannedDiameter(spot);
  let best: Rough | null = null;
  for (const spacing of spacings) {
    if (demand.modulation(spot, spacing * diameter) > largestModulation) continue;
    for (let k = 1; k <= peakSteps; k++) {
      const peak = Math.exp(Math.log(window.low / window.high) * (1 - k / peakSteps));
      const place = { defocus, spacing, peak };
      const p = widestPulseSpacing(table, peak * window.high, spacing * diameter, window, leastInside);
      if (p === 0) continue;
      const { rate } = bestSize(machine, settingOf(spot, demand, place, p));
      if (best === null || rate > best.rate) best = { ...place, rate, pulseSpacing: p };
    }
  }
  return best;
}

/** The fastest field at a place, its pulse spacing widened as far as the window lets it; `guess` m is near it. */
export function fieldAt(
  spot: Spot,
  demand: FieldDemand,
  place: FieldPlace,
  guess: number,
): FoundField | null {
  const diameter = scannedDiameter(spot);
  if (place.defocus < 0 || place.peak > 1 || place.peak <= demand.window.low / demand.window.high)
    return null;
  if (demand.modulation(spot, place.spacing * diameter) > demand.largestModulation) return null;
  const keeps = (p: number) =>
    partsOfSetting(spot, demand, place.peak, settingOf(spot, demand, place, p)).inside >= demand.leastInside;
  let [good, bad] = [0, 0];
  // Outward from the guess until the bound lies between two spacings.
  for (let i = 0, p = guess; i < 8 && (good === 0 || bad === 0); i++) {
    if (keeps(p)) [good, p] = [p, p * 1.15];
    else [bad, p] = [p, p / 1.15];
  }
  if (good === 0) return null;
  for (let i = 0; i < 5 && bad > 0; i++) {
    const middle = Math.sqrt(good * bad);
    if (keeps(middle)) good = middle;
    else bad = middle;
  }
  const setting = settingOf(spot, demand, place, good);
  return { ...place, setting, fastest: bestSize(demand.machine, setting) };
}

/** Steps from a place to the best neighbour until none is better, then with half the step. */
function polish(spotAt: SpotFamily, demand: FieldDemand, start: Rough, report?: Progress): FoundField | null {
  let best = fieldAt(spotAt(start.defocus), demand, start, start.pulseSpacing);
  if (best === null) return null;
  let size = 1;
  for (let halving = 0; halving < halvings; ) {
    let better: FoundField | null = null;
    for (const next of neighbours(best, size)) {
      const field = fieldAt(spotAt(next.defocus), demand, next, best.setting.pulseSpacing);
      if (field && field.fastest.rate > (better ?? best).fastest.rate * (1 + 1e-4)) better = field;
    }
    if (better === null) {
      halving++;
      size /= 2;
      report?.(halving / halvings);
    } else best = better;
  }
  return best;
}

function neighbours({ defocus, spacing, peak }: FieldPlace, size: number): FieldPlace[] {
  const [plane, logarithm, top] = steps.map((step) => step * size) as [number, number, number];
  return [
    { defocus: defocus + plane, spacing, peak },
    { defocus: Math.max(0, defocus - plane), spacing, peak },
    { defocus, spacing: spacing * Math.exp(logarithm), peak },
    { defocus, spacing: spacing * Math.exp(-logarithm), peak },
    { defocus, spacing, peak: Math.min(1, peak + top) },
    { defocus, spacing, peak: peak - top },
    // Closer lines often go with pulses further apart.
    { defocus: defocus + plane, spacing: spacing * Math.exp(logarithm), peak },
    { defocus: Math.max(0, defocus - plane), spacing: spacing * Math.exp(-logarithm), peak },
  ];
}

/** The same setting with the spot as large as it is today. */
export function asToday(machine: FieldMachine, { setting }: FoundField): FastestField {
  return fastestAt(machine, setting, 1);
}
