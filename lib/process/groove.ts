import type { Progress } from '../numerics/progress.ts';
import { Problem } from '../problem.ts';
import type { PulseTrain } from './chordRemoval.ts';
import type { CuttingLight } from './cuttingLight.ts';
import { largest, PassHistory, type PassState, passesAtOnce } from './passHistory.ts';

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
 * second order in the step across, less at kinks. A `history` of the same light and pulses saves the passes it knows.
 */
export function cutGroove(
  light: CuttingLight,
  cut: GrooveCut,
  report?: Progress,
  history = new PassHistory(light, cut),
): Groove {
  const kept = new Map<number, GrooveSection>();
  const whole = Math.ceil(cut.passes - 1e-9);
  const deepest = new Float64Array(whole + 1);
  const area = new Float64Array(whole + 1);
  let state = history.state(0);
  for (let index = 0; state.done < cut.passes - 1e-9; index++) {
    const from = history.state(index);
    const atOnce = passesAtOnce(from);
    state = nextOf(history, index, from, Math.min(atOnce, cut.passes - from.done));
    noteGrowth(light, from, state, deepest, area);
    if (index === 0) refuseOneCut(light, largest(state.depth));
    for (const pass of cut.keep ?? [])
      if (pass > from.done && pass <= state.done) {
        const then = nextOf(history, index, from, pass - from.done);
        kept.set(pass, sectionOf(light, then.depth));
      }
    if (cut.until !== undefined && (largest(state.depth) >= cut.until || outOfReach(state, cut))) break;
    report?.(state.done / whole);
  }
  const done = Math.ceil(state.done - 1e-9);
  const both = <T extends Float64Array | Uint8Array>(half: T) => mirror(light, half);
  return {
    ...sectionOf(light, state.depth),
    passes: state.done,
    deepest: deepest.slice(0, done + 1),
    area: area.slice(0, done + 1),
    lastPass: both(state.removed),
    slope: both(state.slopes),
    stopped: both(stoppedIn(state)),
    kept,
    leftRange: state.leftRange,
  };
}

/** The groove `passes` after `from`, the state number `index`: a state of the history where as many go together. */
function nextOf(history: PassHistory, index: number, from: PassState, passes: number): PassState {
  return passes === passesAtOnce(from) ? history.state(index + 1) : history.after(from, passes);
}

/** Greatest depth and area after each pass from one state to the next; straight between them. */
function noteGrowth(
  light: CuttingLight,
  from: PassState,
  to: PassState,
  deepest: Float64Array,
  area: Float64Array,
): void {
  const goesTo = Math.ceil(to.done - 1e-9);
  const [deep, wide] = [largest(to.depth), areaOf(light, to.depth)];
  for (let pass = from.done + 1; pass <= goesTo; pass++) {
    const share = (pass - from.done) / (goesTo - from.done);
    deepest[pass] = deepest[from.done]! + share * (deep - deepest[from.done]!);
    area[pass] = area[from.done]! + share * (wide - area[from.done]!);
  }
}

function stoppedIn({ depth, removed, level }: PassState): Uint8Array {
  return Uint8Array.from(depth, (d, i) => (removed[i] === 0 && level[i] === 1 && d > 0 ? 1 : 0));
}

/** Passes from which on a groove is taken to deepen ever more slowly: incubation has done its part by then. */
const slowing = 100;

/** The depth asked for is not reached by the passes left, even if each cut as much as the last. */
function outOfReach({ done, depth, removed }: PassState, { passes, until = 0 }: GrooveCut): boolean {
  return done >= slowing && largest(depth) + (passes - done) * largest(removed) < until;
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
