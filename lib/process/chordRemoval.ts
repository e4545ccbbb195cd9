import { positivePart } from '../numerics/positivePart.ts';
import { type CuttingLaw, countingLevel, stepsAt, stepTable } from './cuttingLaw.ts';

/** Pulses along a line as they pass over one place; SI. */
export interface PulseTrain {
  /** J/m² of relative irradiance 1. */
  readonly unit: number;
  readonly pulseSpacing: number;
  /** Pulses of one burst, which land together; 1 without bursts. */
  readonly pulsesPerBurst: number;
  readonly law: CuttingLaw;
}

/** The spot's chord over a place: relative irradiance at `count` nodes in equal steps, an odd number; lent, and written over. */
export interface Chord {
  readonly values: Float64Array;
  /** Room for the logarithms. */
  readonly logarithms: Float64Array;
  readonly count: number;
  /** m from node to node. */
  readonly step: number;
  /** The second half is the mirror image of the first; the number of steps is a multiple of four then. */
  readonly symmetric: boolean;
}

/** What one pass does to a place; one object is used again and again. */
export interface ChordResult {
  /** Depth removed, m, the mean over all places along the line. */
  depth: number;
  /** Pulses that counted. */
  counted: number;
  /** δ of each pulse that removes, summed, m: what d(depth)/d ln F is at most. */
  moves: number;
}

/** After this many passes one threshold serves a whole pass: the mean of ln N over it is that of the middle to 1/(24·4²). */
const settled = 4;
/** Far below every threshold. */
const darkest = 1e-12;

/** Fluence in units of the light from which a pulse counts on a place whose surface slopes: `cosine` of the angle. */
function levelOf(train: PulseTrain, cosine: number): number {
  return countingLevel(train.law) / (train.unit * cosine);
}

/** Takes the logarithms that {@link cutChord} reads, once for a chord, whatever the slope; call it first. */
export function prepareChord(train: PulseTrain, chord: Chord): void {
  const { values, logarithms, count, symmetric } = chord;
  const level = levelOf(train, 1);
  const end = symmetric ? (count - 1) / 2 : count - 1;
  let done = -1;
  for (let i = 1; i < end; i += 2) {
    if (values[i - 1]! <= level && values[i]! <= level && values[i + 1]! <= level) continue;
    for (let j = Math.max(done + 1, i - 1); j <= i + 1; j++)
      logarithms[j] = Math.log(values[j]! > darkest ? values[j]! : darkest);
    done = i + 1;
  }
  if (symmetric) for (let i = 0; i < end; i++) logarithms[count - 1 - i] = logarithms[i]!;
}

/**
 * Removal on a place while the spot's chord passes over it, `cosine` of the angle between its surface and the beam's
 * cross-section, after `before` pulses counted. The mean over all places along the line is ∫ d(F(x), N(x)) dx/p: the
 * pulse that lands x before the place is the one number N(x) since the chord's begin. ln F is a parabola over every two
 * steps, which is exact for a Gaussian.
 */
export function cutChord(
  train: PulseTrain,
  chord: Chord,
  cosine: number,
  before: number,
  into: ChordResult,
): void {
  const { pulseSpacing, pulsesPerBurst, law } = train;
  const level = levelOf(train, cosine);
  const length = lengthAbove(chord, level);
  into.counted = (length * chord.step * pulsesPerBurst) / pulseSpacing;
  into.depth = 0;
  into.moves = 0;
  if (length === 0) return;
  const constant = law.incubation.exponent === 1 || before > settled * into.counted;
  const logarithm = Math.log(train.unit * cosine);
  const sum = constant
    ? sumOfSteps(law, chord, logarithm, level, before + into.counted / 2)
    : sumAlong(train, chord, logarithm, level, before);
  into.depth = (sum * chord.step * pulsesPerBurst) / pulseSpacing;
  // At the threshold of the last pulse, the lowest where incubation lowers it: walls never move further than this says.
  const rise = law.second ? Math.max(law.depth, law.second.depth) : law.depth;
  const above = lengthAbove(
    chord,
    stepsAt(law, Math.max(1, before + into.counted))[0]!.from / (train.unit * cosine),
  );
  into.moves = (rise * above * chord.step * pulsesPerBurst) / pulseSpacing;
}

/** In steps: how much of the chord lies above `level`; between nodes it is straight. */
function lengthAbove({ values, count, symmetric }: Chord, level: number): number {
  const end = symmetric ? (count - 1) / 2 : count - 1;
  let length = 0;
  let left = values[0]!;
  for (let i = 1; i <= end; i++) {
    const right = values[i]!;
    if (left > level || right > level) length += partAbove(left, right, level);
    left = right;
  }
  return symmetric ? 2 * length : length;
}

function partAbove(left: number, right: number, level: number): number {
  if (left > level) return right > level ? 1 : (left - level) / (left - right);
  return right > level ? (right - level) / (right - left) : 0;
}

/** ∫ d(F) over the chord in steps, with one threshold: that of the pulse number `pulses`. */
function sumOfSteps(
  law: CuttingLaw,
  { values, logarithms, count, symmetric }: Chord,
  logarithm: number,
  level: number,
  pulses: number,
): number {
  const end = symmetric ? (count - 1) / 2 : count - 1;
  let sum = 0;
  for (const { from, rise } of stepsAt(law, Math.max(1, pulses))) {
    const over = logarithm - Math.log(from);
    let part = 0;
    for (let i = 1; i < end; i += 2) {
      if (values[i - 1]! <= level && values[i]! <= level && values[i + 1]! <= level) continue;
      const [l0, l1, l2] = [logarithms[i - 1]!, logarithms[i]!, logarithms[i + 1]!];
      part += positivePart(l1 + over, (l2 - l0) / 2, (l0 + l2) / 2 - l1, -1, 1);
    }
    sum += rise * part;
  }
  return symmetric ? 2 * sum : sum;
}

/** The same with the threshold of each pulse, cut where one pulse follows another. */
function sumAlong(train: PulseTrain, chord: Chord, logarithm: number, level: number, before: number): number {
  const { values, logarithms, count } = chord;
  const { pulsesPerBurst } = train;
  const { rises, logarithmOf } = stepTable(train.law);
  const perStep = train.pulseSpacing / chord.step;
  // Many pulses to a step go together, half a step at a time.
  const together = Math.max(1, Math.round(0.5 / perStep));
  const piece = together * perStep;
  let passed = 0;
  let sum = 0;
  for (let i = 1; i < count - 1; i += 2) {
    const [left, middle, right] = [values[i - 1]!, values[i]!, values[i + 1]!];
    if (left <= level && middle <= level && right <= level) continue;
    const [l0, l1, l2] = [logarithms[i - 1]!, logarithms[i]!, logarithms[i + 1]!];
    const counts = partAbove(left, middle, level) + partAbove(middle, right, level);
    // Where counting begins inside the two steps; nothing before it removes.
    let from = left > level ? -1 : 1 - counts;
    const end = from + counts;
    while (from < end - 1e-12) {
      const number = Math.floor(passed / piece + 1e-9);
      const to = Math.min(end, from + (number + 1) * piece - passed);
      const shots = number * together + (together - 1) / 2;
      const pulses = before + pulsesPerBurst * shots + (pulsesPerBurst + 1) / 2;
      for (let step = 0; step < rises.length; step++) {
        const over = logarithm - logarithmOf(step, pulses);
        sum += rises[step]! * positivePart(l1 + over, (l2 - l0) / 2, (l0 + l2) / 2 - l1, from, to);
      }
      passed += to - from;
      from = to;
    }
  }
  return sum;
}
