import { type Chord, type ChordResult, cutChord, type PulseTrain, prepareChord } from './chordRemoval.ts';
import { type CuttingLight, chordAt } from './cuttingLight.ts';
import { wallSlopes } from './wallSlope.ts';

/** A wall must not move by more than this part of a step in one go; explicit schemes need less than 1. */
const largestMove = 0.8;

/** A groove on its way from pass to pass; one object, written over. */
export interface Run {
  readonly light: CuttingLight;
  readonly cut: PulseTrain;
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

/** A fresh surface. */
export function startOf(light: CuttingLight, cut: PulseTrain): Run {
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
export function onePass(run: Run, part: number): boolean {
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
