import { type Hatch, type HatchLine, lineAt, lineCount, lineOffset } from './hatch.ts';
import { lineMotion, placeAt, timeAt } from './lineMotion.ts';
import type { PulsePlaces } from './mapGrid.ts';
import type { ScanMotion } from './scanTime.ts';

/** A rectangle on the workpiece, metres, in the coordinates of the hatch. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Pulses and lines that are taken together, one standing for as many; 1 for each by itself, an odd number of lines. */
export interface Together {
  readonly pulses: number;
  readonly lines: number;
}

/** At which turn a line of a pass is written: the inverse of {@link file://./hatch.ts} `writtenLine`; both from 0. */
export function turnOf(count: number, interlacing: number, index: number): number {
  const rounds = Math.min(interlacing, count);
  const round = index % rounds;
  // Of the rounds before, the first ones hold a line more where the lines do not divide evenly.
  const longer = count % rounds;
  return round * Math.floor(count / rounds) + Math.min(round, longer) + Math.floor(index / rounds);
}

/** First and last index of the lines of a pass that come into a box; last below first for none. */
function linesIn(hatch: Hatch, pass: number, box: Box): readonly [number, number] {
  const angle = pass * hatch.angle;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const offsets = [box.left, box.right].flatMap((x) => [box.bottom, box.top].map((y) => c * y - s * x));
  const first = lineOffset(hatch, pass, 0);
  const index = (offset: number) => (offset - first) / hatch.lineSpacing;
  const last = lineCount(hatch, pass) - 1;
  return [
    Math.max(0, Math.ceil(index(Math.min(...offsets)))),
    Math.min(last, Math.floor(index(Math.max(...offsets)))),
  ];
}

/** Stretch of a line within a box, from its beginning; undefined where it passes by. */
function stretchIn(line: HatchLine, box: Box): readonly [number, number] | undefined {
  if (line.length === 0) return undefined;
  let [from, to] = [0, line.length];
  for (const [start, end, low, high] of [
    [line.fromX, line.toX, box.left, box.right],
    [line.fromY, line.toY, box.bottom, box.top],
  ] as const) {
    const slope = (end - start) / line.length;
    if (Math.abs(slope) < 1e-12) {
      if (start < low || start > high) return undefined;
      continue;
    }
    const ends = [(low - start) / slope, (high - start) / slope];
    from = Math.max(from, Math.min(...ends));
    to = Math.min(to, Math.max(...ends));
  }
  return from <= to ? [from, to] : undefined;
}

/** Time from pulse to pulse, or from group to group: then a whole number of groups fills the line. */
function periodOf(time: number, rate: number, pulses: number): number {
  return pulses === 1 ? 1 / rate : time / Math.max(1, Math.round((time * rate) / pulses));
}

/**
 * Places of the pulses of the given passes that land in a box, as they fall: the first of a line half a period of the
 * repetition rate after its beginning, then one every period, crowded where the scanner turns round at the edge with the
 * laser on. A burst counts as one. `together` groups neighbours, one in the middle of each group.
 */
export function pulsesIn(
  hatch: Hatch,
  passes: readonly number[],
  motion: Pick<ScanMotion, 'speed' | 'acceleration' | 'turnRound'>,
  rate: number,
  box: Box,
  together: Together = { pulses: 1, lines: 1 },
): PulsePlaces {
  const [x, y]: [number[], number[]] = [[], []];
  for (const pass of passes) {
    const [first, last] = linesIn(hatch, pass, box);
    const count = lineCount(hatch, pass);
    // Groups begin at the end of the pass that is nearer, so that a group too short lies far away.
    const begin = first + last < count ? 0 : (count - 1) % together.lines;
    const middle = begin + (together.lines - 1) / 2;
    const skipped = Math.max(0, Math.ceil((first - middle) / together.lines));
    for (let index = middle + skipped * together.lines; index <= last; index += together.lines) {
      const line = lineAt(hatch, pass, turnOf(count, hatch.interlacing, index));
      const stretch = stretchIn(line, box);
      if (stretch === undefined) continue;
      const run = lineMotion(line.length, motion);
      const period = periodOf(run.time, rate, together.pulses);
      const [from, to] = stretch.map((place) => timeAt(run, place) / period - 0.5) as [number, number];
      for (let i = Math.ceil(from); i <= Math.floor(to); i++) {
        const part = placeAt(run, (i + 0.5) * period) / line.length;
        x.push(line.fromX + part * (line.toX - line.fromX));
        y.push(line.fromY + part * (line.toY - line.fromY));
      }
    }
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y) };
}
