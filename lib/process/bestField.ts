import type { Progress } from '../numerics/progress.ts';
import { portion } from '../numerics/progress.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { type ChordTable, tabulateChords } from './chordTable.ts';
import { widestPulseSpacing } from './densePulses.ts';
import { countingDiameter } from './fieldChecks.ts';
import {
  bestSize,
  type FastestField,
  type FieldMachine,
  type FieldSetting,
  fastestAt,
} from './fieldMachine.ts';
import { type FieldPlace, neighbours } from './fieldPlace.ts';
import { type FieldParts, partsInWindow } from './fieldWindow.ts';
import type { PulseWindow } from './pulseWindow.ts';

/** The spots of a beam by plane, ζ in Rayleigh lengths; metres as the lens makes them today. */
export type SpotFamily = (defocus: number) => Spot;

/** What every field must keep, with whatever beam. */
export interface FieldDemand {
  readonly wanted: PulseWindow;
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

/** A place that keeps the demand, with its pulse spacing as far as that goes. */
export interface FoundField extends FieldPlace {
  readonly setting: FieldSetting;
  readonly fastest: FastestField;
}

/** The setting of a place with that pulse spacing. */
function settingOf(spot: Spot, demand: FieldDemand, place: FieldPlace, pulseSpacing: number): FieldSetting {
  const diameter = countingDiameter(spot);
  const energy =
    (place.peak * demand.wanted.high * spot.effectiveArea) / (spot.transmission * demand.transmission);
  return { pulseSpacing, lineSpacing: place.spacing * diameter, energy, diameter };
}

/** Parts of the field that a setting writes. */
export function partsOfSetting(
  spot: Spot,
  demand: FieldDemand,
  peak: number,
  { pulseSpacing, lineSpacing }: FieldSetting,
): FieldParts {
  const unit = (peak * demand.wanted.high) / spot.peak;
  return partsInWindow(spot, unit, { pulseSpacing, lineSpacing, passes: 1 }, demand.wanted);
}

/** Planes, line spacings over the diameter, and peaks over the upper bound that are looked at first. */
const planes = Array.from({ length: 11 }, (_, i) => i * 0.1);
const spacings = Array.from({ length: 16 }, (_, i) => 0.12 * 1.2 ** i);
const peakSteps = 5;
/** Groups of line spacings, and further planes, from whose best the search goes on. */
const [spacingGroups, starts] = [4, 2];
/** How often the first steps are halved. */
const halvings = 4;
/** Of what is found so, as many are counted pulse by pulse. */
const counted = 3;

/**
 * The fastest way to write a field with a beam: plane, peak fluence, line spacing, pulse spacing, size of the spot and
 * speed, such that the demand is kept. First planes, spacings and peaks on a grid with pulses counted by lengths of line,
 * then steps from the best of them alike; at last the pulse spacing of the best, with the field counted pulse by pulse
 * ({@link partsInWindow}). Null where nothing keeps the demand. Rate to two per cent (tests compare with a brute-force scan
 * around it).
 */
export function bestField(family: SpotFamily, demand: FieldDemand, report?: Progress): FoundField | null {
  const planeAt = keptPlanes(family);
  const rough = roughly(planeAt, demand, portion(report, 0, 0.4));
  const refined = rough.map((start, i) => {
    const found = refine(planeAt, demand, start);
    report?.(0.4 + (0.4 * (i + 1)) / rough.length);
    return found;
  });
  let best: FoundField | null = null;
  refined.sort(byRate);
  refined.slice(0, counted).forEach((place, i) => {
    const found = fieldAt(planeAt(place.defocus).spot, demand, place, place.pulseSpacing);
    // The pulse spacing is found to 5e-4.
    if (found && (best === null || found.fastest.rate > best.fastest.rate * (1 + 1e-3))) best = found;
    report?.(0.8 + (0.2 * (i + 1)) / counted);
  });
  return best;
}

/** A plane of the family, sampled for searching. */
interface Plane {
  readonly spot: Spot;
  readonly diameter: number;
  readonly table: ChordTable;
}

/** Planes are asked for often, and made once. */
function keptPlanes(family: SpotFamily): (defocus: number) => Plane {
  const known = new Map<number, Plane>();
  return (defocus) => {
    const kept = known.get(defocus);
    if (kept) return kept;
    const spot = family(defocus);
    const diameter = countingDiameter(spot);
    const plane = { spot, diameter, table: tabulateChords(spot, 1.2 * diameter) };
    known.set(defocus, plane);
    return plane;
  };
}

type Rough = FieldPlace & { readonly rate: number; readonly pulseSpacing: number };

/**
 * Places on the grid that keep the demand as far as can be seen roughly, to go on from: the fastest of each group of line
 * spacings, since closer and wider lines have maxima of their own, and then the fastest of other planes.
 */
function roughly(planeAt: (defocus: number) => Plane, demand: FieldDemand, report?: Progress): Rough[] {
  const found: Rough[] = [];
  const groups: (Rough | null)[] = Array.from({ length: spacingGroups }, () => null);
  planes.forEach((defocus, i) => {
    const ofPlane: (Rough | null)[] = groups.map(() => null);
    spacings.forEach((spacing, j) => {
      const group = Math.floor((j * spacingGroups) / spacings.length);
      for (let k = 1; k <= peakSteps; k++) {
        const peak = (demand.wanted.low / demand.wanted.high) ** (1 - k / peakSteps);
        ofPlane[group] = better(planeAt(defocus), demand, { defocus, spacing, peak }, ofPlane[group]!);
      }
    });
    const best = fastest(ofPlane);
    ofPlane.forEach((place, group) => {
      groups[group] = fastest([groups[group]!, place]);
    });
    if (best) found.push(best);
    report?.((i + 1) / planes.length);
  });
  const firsts = groups.flatMap((place) => place ?? []);
  const others = found
    .filter(({ defocus }) => firsts.every((first) => first.defocus !== defocus))
    .sort(byRate);
  return [...firsts, ...others.slice(0, starts)];
}

/** Rates that differ by less than this part are alike: planes of a Gaussian are, and rounding must not choose among them. */
const alike = 1e-5;

/** The fastest of several places, the first of equals; null where there is none. */
function fastest(places: readonly (Rough | null)[]): Rough | null {
  return places.reduce(
    (best, place) => (place && (!best || place.rate > best.rate * (1 + alike)) ? place : best),
    null,
  );
}

/** The faster place first, of equals the one nearer to the focus. */
function byRate(a: Rough, b: Rough): number {
  const same = Math.abs(a.rate - b.rate) <= alike * a.rate;
  return same ? a.defocus - b.defocus || a.spacing - b.spacing : b.rate - a.rate;
}

/** The place with its rate where it is faster than the best so far and keeps the demand, else that one. */
function better<B extends Rough | null>(
  plane: Plane,
  demand: FieldDemand,
  place: FieldPlace,
  best: B,
): Rough | B {
  const { wanted, leastInside, largestModulation, machine } = demand;
  if (place.defocus < 0 || place.peak > 1 || place.peak <= wanted.low / wanted.high) return best;
  const spacing = place.spacing * plane.diameter;
  const p = widestPulseSpacing(plane.table, place.peak * wanted.high, spacing, wanted, leastInside);
  if (p === 0) return best;
  const { rate } = bestSize(machine, settingOf(plane.spot, demand, place, p));
  // The modulation is asked last, since it takes longest.
  if (best !== null && rate <= best.rate * (1 + alike)) return best;
  if (demand.modulation(plane.spot, spacing) > largestModulation) return best;
  return { ...place, rate, pulseSpacing: p };
}

/** Steps from a place to the best neighbour in any direction until none is better, then with half the step. */
function refine(planeAt: (defocus: number) => Plane, demand: FieldDemand, start: Rough): Rough {
  let best = start;
  let size = 1;
  for (let halving = 0; halving <= halvings; ) {
    let next = best;
    for (const place of neighbours(best, size)) next = better(planeAt(place.defocus), demand, place, next);
    if (next === best) {
      halving++;
      size /= 2;
    } else best = next;
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
  const diameter = countingDiameter(spot);
  if (place.defocus < 0 || place.peak > 1 || place.peak <= demand.wanted.low / demand.wanted.high)
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
  for (let i = 0; i < 8 && bad > 0; i++) {
    const middle = Math.sqrt(good * bad);
    if (keeps(middle)) good = middle;
    else bad = middle;
  }
  const setting = settingOf(spot, demand, place, good);
  return { ...place, setting, fastest: bestSize(demand.machine, setting) };
}

/** The same setting with the spot as large as it is today. */
export function asToday(machine: FieldMachine, { setting }: FoundField): FastestField {
  return fastestAt(machine, setting, 1);
}
