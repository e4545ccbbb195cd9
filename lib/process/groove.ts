import type { Progress } from '../numerics/progress.ts';
import { type Chord, type ChordResult, cutChord, type PulseTrain, prepareChord } from './chordRemoval.ts';
import { type CuttingLight, chordAt } from './cuttingLight.ts';
import { wallSlopes } from './wallSlope.ts';

/** A cross-section of a groove. */
export interface GrooveSection {
  /** Places across the line, m, ascending. */
  readonly y: Float64Array;
  /** Depth below the fresh surface there, m. */
  readonly depth: Float64Array;
}

/** A groove as it was cut. */
export interface Groove extends GrooveSection {
  /** After each pass, from none on: greatest depth and area of the cross-section. */
  readonly deepest: Float64Array;
  readonly area: Float64Array;
  /** Depth that the last pass removed at each place. */
  readonly lastPass: Float64Array;
  /** Slope of the wall at each place before the last pass. */
  readonly slope: Float64Array;
  /** The last pass would remove something on a level surface at that depth, but the slope leaves nothing: 1, else 0. */
  readonly stopped: Uint8Array;
  /** Sections asked for, by their pass. */
  readonly kept: ReadonlyMap<number, GrooveSection>;
  /** The groove became deeper than spots are computed: from this pass on the light is taken as gone there. */
  readonly leftRange: number | undefined;
}

/** What is cut: {@link PulseTrain} and how often. */
export interface GrooveCut extends PulseTrain {
  /** Passes; of a broken number the last one counts by its part. */
  readonly passes: number;
  /** Passes after which the section is kept. */
  readonly keep?: readonly number[];
}

/** A wall must not move by more than this part of a step in one go; explicit schemes need less than 1. */
const largestMove = 0.8;

/**
 * The groove after some passes: each pass removes by {@link cutChord}, with the fluence of the plane at the depth that the
 * passes before have left, times the cosine of the slope of the wall as it grows. First order in the depth of one pass;
 * second order in the step across, less at kinks.
 */
export function cutGroove(light: CuttingLight, cut: GrooveCut, report?: Progress): Groove {
  const rows = light.across.length;
  const run = startOf(light, cut);
  const kept = new Map<number, GrooveSection>();
  const wanted = new Set(cut.keep ?? []);
  const whole = Math.ceil(cut.passes - 1e-9);
  const deepest = new Float64Array(whole + 1);
  const area = new Float64Array(whole + 1);
  let leftRange: number | undefined;
  let still = false;
  for (let pass = 1; pass <= whole; pass++) {
    if (!still) {
      const inside = onePass(run, Math.min(1, cut.passes - pass + 1));
      if (!inside) leftRange ??= pass;
      still = run.removed.every((depth) => depth === 0) && run.counted.every((count) => count === 0);
    }
    deepest[pass] = largest(run.depth);
    area[pass] = areaOf(light, run.depth);
    if (wanted.has(pass)) kept.set(pass, sectionOf(light, run.depth));
    if (pass % 16 === 0) report?.(pass / whole);
  }
  const section = sectionOf(light, run.depth);
  const both = <T extends Float64Array | Uint8Array>(half: T) => mirror(light, half);
  const stopped = Uint8Array.from({ length: rows }, (_, i) =>
    run.removed[i] === 0 && run.level[i] === 1 && run.depth[i]! > 0 ? 1 : 0,
  );
  return {
    ...section,
    deepest,
    area,
    lastPass: both(run.removed),
    slope: both(run.slopes),
    stopped: both(stopped),
    kept,
    leftRange,
  };
}

interface Run {
  readonly light: CuttingLight;
  readonly cut: GrooveCut;
  readonly step: number;
  readonly depth: Float64Array;
  /** Pulses counted so far. */
  readonly pulses: Float64Array;
  readonly slopes: Float64Array;
  readonly removed: Float64Array;
  readonly counted: Float64Array;
  /** 1 where the chord at that depth would remove something if the surface were level. */
  readonly level: Uint8Array;
  readonly chords: readonly Chord[];
  /** Room for one pass. */
  readonly before: Float64Array;
  readonly halfway: Float64Array;
  readonly sum: Float64Array;
}

function startOf(light: CuttingLight, cut: GrooveCut): Run {
  const rows = light.across.length;
  const count = light.along.length;
  const empty = () => new Float64Array(rows);
  return {
    light,
    cut,
    step: light.across[1]! - light.across[0]!,
    depth: empty(),
    pulses: empty(),
    slopes: empty(),
    removed: empty(),
    counted: empty(),
    level: new Uint8Array(rows),
    before: empty(),
    halfway: empty(),
    sum: empty(),
    chords: Array.from(light.across, () => ({
      values: new Float64Array(count),
      logarithms: new Float64Array(count),
      count,
      step: light.along[1]! - light.along[0]!,
      symmetric: light.symmetric,
    })),
  };
}

/**
 * Cuts once more, by `part` of a pass; false where the groove is deeper than the light is known. Light and pulses are
 * those before the pass; slopes follow the walls within it, by Heun's rule in steps in which no wall moves too far.
 */
function onePass(run: Run, part: number): boolean {
  const { depth, pulses, removed, counted, before, halfway, sum } = run;
  const inside = lightUp(run);
  // The first pass meets a level surface: what it leaves of a Gaussian is closed form.
  const fresh = depth.every((d) => d === 0);
  sum.fill(0);
  let left = part;
  while (left > 1e-9) {
    const fastest = removal(run, depth);
    const go = Math.min(left, largestMove / Math.max(largestMove, fastest));
    before.set(removed);
    for (let i = 0; i < depth.length; i++) halfway[i] = depth[i]! + go * before[i]!;
    if (!fresh) removal(run, halfway);
    for (let i = 0; i < depth.length; i++) {
      const cut = (go * (before[i]! + removed[i]!)) / 2;
      depth[i]! += cut;
      sum[i]! += cut;
    }
    left -= go;
  }
  for (let i = 0; i < depth.length; i++) {
    removed[i] = sum[i]! / part;
    pulses[i]! += part * counted[i]!;
  }
  return inside;
}

/** The chord of each place at its depth. */
function lightUp({ light, cut, depth, chords }: Run): boolean {
  let inside = true;
  for (let row = 0; row < depth.length; row++) {
    if (!chordAt(light, row, depth[row]!, chords[row]!.values)) inside = false;
    prepareChord(cut, chords[row]!);
  }
  return inside;
}

/**
 * Fills slopes, removed and counted for the walls of `depth`; gives the steps by which the fastest wall moves in a whole pass:
 * a slope t that grows by dt loses t/(1+t²) dt in ln cos α for each pulse that removes.
 */
function removal(run: Run, depth: Float64Array): number {
  const { cut, step, light, pulses, slopes, removed, counted, level, chords } = run;
  wallSlopes(depth, step, light.mirrored, slopes);
  const result: ChordResult = { depth: 0, counted: 0, moves: 0 };
  let fastest = 0;
  for (let row = 0; row < depth.length; row++) {
    const slope = slopes[row]!;
    cutChord(cut, chords[row]!, 1 / Math.sqrt(1 + slope * slope), pulses[row]!, result);
    removed[row] = result.depth;
    counted[row] = result.counted;
    level[row] = result.depth > 0 ? 1 : 0;
    fastest = Math.max(fastest, (result.moves * slope) / (1 + slope * slope));
    if (result.depth > 0 || slope === 0) continue;
    cutChord(cut, chords[row]!, 1, pulses[row]!, result);
    level[row] = result.depth > 0 ? 1 : 0;
  }
  return fastest / step;
}

function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) if (values[i]! > most) most = values[i]!;
  return most;
}

/** Area of the cross-section, m²: trapezoids. */
function areaOf(light: CuttingLight, depth: Float64Array): number {
  const step = light.across[1]! - light.across[0]!;
  let sum = 0;
  for (let i = 0; i < depth.length; i++) sum += depth[i]!;
  if (!light.mirrored) return step * (sum - (depth[0]! + depth.at(-1)!) / 2);
  return step * (2 * sum - depth[0]! - depth.at(-1)!);
}

function sectionOf(light: CuttingLight, depth: Float64Array): GrooveSection {
  if (!light.mirrored) return { y: light.across.slice(), depth: depth.slice() };
  const y = new Float64Array(2 * depth.length - 1);
  light.across.forEach((place, i) => {
    y[depth.length - 1 + i] = place;
    y[depth.length - 1 - i] = -place;
  });
  return { y, depth: mirror(light, depth) };
}

function mirror<T extends Float64Array | Uint8Array>(light: CuttingLight, half: T): T {
  if (!light.mirrored) return half.slice() as T;
  const last = half.length - 1;
  const whole = new (half.constructor as new (length: number) => T)(2 * last + 1);
  for (let i = 0; i <= last; i++) {
    whole[last + i] = half[i]!;
    whole[last - i] = half[i]!;
  }
  return whole;
}
