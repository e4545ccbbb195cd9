import type { Progress } from '../numerics/progress.ts';
import { Problem } from '../problem.ts';
import type { PulseTrain } from './chordRemoval.ts';
import type { CuttingLight } from './cuttingLight.ts';
import { onePass, type Run, startOf } from './groovePass.ts';

/** A cross-section of a groove. */
export interface GrooveSection {
  /** Places across the line, m, ascending. */
  readonly y: Float64Array;
  /** Depth below the fresh surface there, m. */
  readonly depth: Float64Array;
}

/** A groove as it was cut. */
export interface Groove extends GrooveSection {
  /** Passes that were made. */
  readonly passes: number;
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
  /** Depth in m at which no further pass is made; none either once it is out of reach of the passes left. */
  readonly until?: number;
}

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
  let done = 0;
  while (done < whole) {
    const part = Math.min(passesAtOnce(run, done, wanted), cut.passes - done);
    const goesTo = Math.ceil(done + part - 1e-9);
    if (!onePass(run, part)) leftRange ??= done + 1;
    const [deep, wide] = [largest(run.depth), areaOf(light, run.depth)];
    for (let pass = done + 1; pass <= goesTo; pass++) {
      const share = (pass - done) / (goesTo - done);
      deepest[pass] = deepest[done]! + share * (deep - deepest[done]!);
      area[pass] = area[done]! + share * (wide - area[done]!);
    }
    done = goesTo;
    if (done === 1) refuseOneCut(light, deep);
    if (wanted.has(done)) kept.set(done, sectionOf(light, run.depth));
    if (cut.until !== undefined && (deep >= cut.until || outOfReach(run, cut, done))) break;
    report?.(done / whole);
  }
  const section = sectionOf(light, run.depth);
  const both = <T extends Float64Array | Uint8Array>(half: T) => mirror(light, half);
  const stopped = Uint8Array.from({ length: rows }, (_, i) =>
    run.removed[i] === 0 && run.level[i] === 1 && run.depth[i]! > 0 ? 1 : 0,
  );
  return {
    ...section,
    passes: Math.min(done, cut.passes),
    deepest: deepest.slice(0, done + 1),
    area: area.slice(0, done + 1),
    lastPass: both(run.removed),
    slope: both(run.slopes),
    stopped: both(stopped),
    kept,
    leftRange,
  };
}

/** Passes from which on a groove is taken to deepen ever more slowly: incubation has done its part by then. */
const slowing = 100;

/** The depth asked for is not reached by the passes left, even if each cut as much as the last. */
function outOfReach({ depth, removed }: Run, { passes, until = 0 }: GrooveCut, done: number): boolean {
  return done >= slowing && largest(depth) + (passes - done) * largest(removed) < until;
}

/** Passes go together as long as they remove no more than this part of the depth. */
const goesTogether = 0.002;

function passesAtOnce({ depth, removed }: Run, done: number, wanted: ReadonlySet<number>): number {
  const fastest = largest(removed);
  if (done === 0) return 1;
  const many =
    fastest === 0 ? Number.MAX_SAFE_INTEGER : Math.floor((goesTogether * largest(depth)) / fastest);
  const next = [...wanted].filter((pass) => pass > done);
  return Math.max(1, Math.min(many, ...next.map((pass) => pass - done)));
}

/** A pass that cuts deeper than the spot is wide is no step of a groove. */
function refuseOneCut({ across }: CuttingLight, depth: number): void {
  const width = 2 * across.at(-1)!;
  if (depth <= width) return;
  const show = (length: number) => `${Number((1e6 * length).toPrecision(2))} µm`;
  throw new Problem(
    'outside',
    `One pass would cut ${show(depth)} deep where the spot removes over ${show(width)}: the walls of a groove are followed from pass to pass, and this is no step. Scan faster, or lower the pulse energy.`,
    { input: 'scan.speed', value: show(depth), allowed: `up to ${show(width)} a pass` },
  );
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
