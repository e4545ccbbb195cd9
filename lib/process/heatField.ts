import { gaussLegendre } from '../numerics/gaussLegendre.ts';
import { smoothSum } from '../numerics/smoothSum.ts';
import { type HeatedLine, lineRise, oldLineRise, ownLineRise } from './heatLine.ts';
import { type HeatInput, spreadSquare } from './heatPulse.ts';

/** A field as its heat goes: lines of one length beside each other, written in rounds where they are interlaced; SI. */
export interface HeatedField {
  /** Heat inputs a line. */
  readonly pulses: number;
  readonly pulseSpacing: number;
  /** Hz. */
  readonly rate: number;
  readonly lines: number;
  readonly lineSpacing: number;
  /** From the beginning of a line to that of the next, s. */
  readonly lineTime: number;
  /** Every how many lines one is written. */
  readonly interlacing: number;
  readonly directions: 'both' | 'one';
  readonly passes: number;
  /** s. */
  readonly passTime: number;
}

/** Where the spot stands, and what place is asked for. */
export interface HeatPlace {
  /** Number of the pulse that comes next. */
  readonly pulse: number;
  /** Number of the line in the last round. */
  readonly line: number;
  /** How far behind the next pulse the place lies, on the line being written, m; none where left out. */
  readonly behind?: number;
}

/** Rise just before the next pulse, K: from its own line, and from all lines before. */
export interface RiseParts {
  readonly own: number;
  readonly lines: number;
}

/** Lines written this long ago, in lines, are taken as continuous ones. */
const oldFrom = 6;
/** Fewest lines, and fewest rounds or passes, that are taken together. */
const [leastLines, leastRounds] = [8, 6];
const deadFrom = 45;

/** Rounds of a pass: how many, how many lines each has and how many came before it. `round` may lie between whole ones. */
export function roundsOf({ lines, interlacing }: Pick<HeatedField, 'lines' | 'interlacing'>) {
  const rounds = Math.min(interlacing, lines);
  const [each, more] = [Math.floor(lines / rounds), lines % rounds];
  return {
    rounds,
    linesIn: (round: number) => each + (round < more ? 1 : 0),
    linesBefore: (round: number) => round * each + Math.min(round, more),
  };
}

/**
 * Rise at a place of the last round of the last pass, just before its next pulse. Lines up to six lines ago are summed
 * pulse by pulse, older ones as continuous lines, long runs of them as integrals over lines, rounds and passes; a
 * hatch that is turned counts as if it were not. To 5e-5 of the rise (against sums of every pulse).
 */
export function fieldRiseAt(heat: HeatInput, field: HeatedField, place: HeatPlace): RiseParts {
  const { rounds, linesBefore } = roundsOf(field);
  const linesAPass = field.passTime / field.lineTime;
  const last = linesBefore(rounds - 1);
  const round = (ago: number, passesAgo: number) => {
    const since = last - linesBefore(rounds - 1 - ago) + passesAgo * linesAPass;
    return roundRise(heat, field, place, { ago, since, running: ago === 0 && passesAgo === 0 });
  };
  const each = Math.max(1, field.lines / rounds);
  const wide = (lineAges: number) =>
    (2 * Math.sqrt(spreadSquare(heat, Math.max(lineAges, 1) * field.lineTime))) / field.lineSpacing;
  const thisPass = smoothSum((ago) => round(ago, 0), 0, rounds - 1, {
    scale: (ago) => Math.min(ago, wide(ago * each)),
    least: leastRounds,
  });
  const before = smoothSum((passes) => allRounds(rounds, (ago) => round(ago, passes)), 1, field.passes - 1, {
    scale: (passes) => passes,
    least: leastRounds,
  });
  const own = ownLineRise(heat, field.pulseSpacing, field.rate, place.pulse, place.behind);
  return { own, lines: thisPass + before };
}

/** The place asked for, counted in pulses along its line. */
const alongOf = (field: HeatedField, { pulse, behind = 0 }: HeatPlace) => pulse - behind / field.pulseSpacing;

const roundRule = gaussLegendre(4);

/** Sum over the rounds of an older pass: all where they are few, else at four places between them. */
function allRounds(rounds: number, rise: (ago: number) => number): number {
  let sum = 0;
  if (rounds <= 8) for (let ago = 0; ago < rounds; ago++) sum += rise(ago);
  else
    for (let k = 0; k < 4; k++)
      sum += (rounds / 2) * roundRule.weights[k]! * rise((rounds * (1 + roundRule.nodes[k]!)) / 2 - 0.5);
  return sum;
}

/** Which round: how many rounds ago, and by how many lines its line beside the place is older than the one being written. */
interface RoundAgo {
  readonly ago: number;
  readonly since: number;
  /** The round that is being written: only lines before the place count. */
  readonly running: boolean;
}

/** Rise from the lines of a round. `j` counts lines of the round back from the place. */
function roundRise(heat: HeatInput, field: HeatedField, place: HeatPlace, round: RoundAgo): number {
  const { rounds, linesIn } = roundsOf(field);
  const to = place.line;
  const from = round.running ? 1 : place.line - linesIn(rounds - 1 - round.ago) + 1;
  if (to < from) return 0;
  if (!round.running && isEven(heat, field, round, to - from + 1))
    return evenRoundRise(heat, field, place, round, from, to);
  const nearest = Math.min(Math.max(0, from), to);
  const step = field.directions === 'both' ? 2 : 1;
  let sum = 0;
  for (let phase = 0; phase < step; phase++) {
    sum += run(heat, field, place, round, nearest + phase, step, Math.floor((to - nearest - phase) / step));
    const down = nearest - 1 - phase;
    sum += run(heat, field, place, round, down, -step, Math.floor((down - from) / step));
  }
  return sum;
}

/** Lines of a round from which on it may count as even, and how much wider than their distance heat must have spread. */
const [evenFrom, evenSpread] = [64, 6];

/** Whether an older round can be taken as even across its lines: many, and their heat has run together. */
function isEven(heat: HeatInput, field: HeatedField, { since }: RoundAgo, count: number): boolean {
  const youngest = Math.max(0, since - count / 2) * field.lineTime;
  const stride = roundsOf(field).rounds * field.lineSpacing;
  return count >= evenFrom && spreadSquare(heat, youngest) > (evenSpread * stride) ** 2;
}

const acrossRule = gaussLegendre(32);
/** As for a line along itself. */
const widest = 3.8;

/** Rise from the lines `from` to `to` of an older round, an integral across them, to and fro taken as the mean of both. */
function evenRoundRise(
  heat: HeatInput,
  field: HeatedField,
  place: HeatPlace,
  { ago, since }: RoundAgo,
  from: number,
  to: number,
): number {
  const { rounds } = roundsOf(field);
  const along = alongOf(field, place);
  const reach = widest * Math.sqrt(spreadSquare(heat, (since + to + 1) * field.lineTime));
  const lines = reach / (rounds * field.lineSpacing);
  const middle = -ago / rounds;
  const [first, last] = [Math.max(from - 0.5, middle - lines), Math.min(to + 0.5, middle + lines)];
  if (last <= first) return 0;
  const term = (j: number) => {
    const across = (j * rounds + ago) * field.lineSpacing;
    return oldLineRise(heat, meanLineAgo(field, place.pulse, since + j), along, across);
  };
  const half = (last - first) / 2;
  let sum = 0;
  for (let k = 0; k < acrossRule.nodes.length; k++)
    sum += acrossRule.weights[k]! * term(first + half * (1 + acrossRule.nodes[k]!));
  const slope = (j: number) => term(j + 0.5) - term(j - 0.5);
  return half * sum - (slope(last) - slope(first)) / 24;
}

/** A line that long ago; of those to and fro the mean, as old everywhere as in its middle. */
function meanLineAgo(field: HeatedField, pulse: number, ago: number): HeatedLine {
  if (field.directions === 'one') return lineAgo(field, pulse, ago, false);
  const age = (pulse - (field.pulses - 1) / 2) / field.rate + ago * field.lineTime;
  return { spacing: field.pulseSpacing, count: field.pulses, age, ageStep: 0 };
}

/** Rise from lines j, j + step, …, the last of them `last` steps on; none where that is below 0. */
function run(
  heat: HeatInput,
  field: HeatedField,
  place: HeatPlace,
  { ago, since }: RoundAgo,
  first: number,
  step: number,
  last: number,
): number {
  const { rounds } = roundsOf(field);
  const along = alongOf(field, place);
  const ageOf = (i: number) => since + first + i * step;
  const acrossOf = (i: number) => ((first + i * step) * rounds + ago) * field.lineSpacing;
  const back = field.directions === 'both' && Math.abs(Math.round(since + first)) % 2 === 1;
  const square = (i: number) => spreadSquare(heat, ageOf(i) * field.lineTime);
  const stride = Math.abs(step) * rounds * field.lineSpacing;
  const term = (i: number) => {
    const line = lineAgo(field, place.pulse, ageOf(i), back);
    const rise = ageOf(i) < oldFrom ? lineRise : oldLineRise;
    return rise(heat, line, along, acrossOf(i));
  };
  // The whole line is older than this by what it took to write it.
  const oldest = (i: number) => spreadSquare(heat, (ageOf(i) + 1) * field.lineTime);
  return smoothSum(term, 0, last, {
    scale: (i) => Math.min(ageOf(i) / Math.abs(step), (2 * Math.sqrt(square(i))) / stride),
    least: leastLines,
    done: (i) => 2 * acrossOf(i) ** 2 > deadFrom * oldest(i),
  });
}

/** The line written `ago` lines before the one in which `pulse` comes next. */
function lineAgo(field: HeatedField, pulse: number, ago: number, back: boolean): HeatedLine {
  const { pulses, pulseSpacing, rate, lineTime } = field;
  const sinceItsStart = pulse / rate + ago * lineTime;
  const age = back ? sinceItsStart - (pulses - 1) / rate : sinceItsStart;
  return { spacing: pulseSpacing, count: pulses, age, ageStep: (back ? 1 : -1) / rate };
}
