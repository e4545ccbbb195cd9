/** Straight lines over a rectangular field; SI. The field's centre is (0, 0), its width along x. */
export interface Hatch {
  readonly width: number;
  readonly height: number;
  readonly lineSpacing: number;
  /** Whole number of passes. */
  readonly passes: number;
  /** Turn of the lines from pass to pass, rad; those of the first lie along x. */
  readonly angle: number;
  /** Every how many lines one is written; 1 writes neighbours in turn. A whole number. */
  readonly interlacing: number;
  readonly directions: 'both' | 'one';
}

/** One line inside the field, from where it is begun to where it ends; metres. */
export interface HatchLine {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  readonly length: number;
}

/** Angle of the lines of a pass, counted from 0, against x. */
function angleOf({ angle }: Hatch, pass: number): number {
  return pass * angle;
}

/** Extent of the field across lines at that angle, m. */
function extentAcross({ width, height }: Hatch, angle: number): number {
  return width * Math.abs(Math.sin(angle)) + height * Math.abs(Math.cos(angle));
}

/** Lines of a pass: as many as cover the field, each its own spacing wide. */
export function lineCount(hatch: Hatch, pass: number): number {
  // A hair off, or rounding would add a line to a field of a whole number of them.
  return Math.max(1, Math.ceil(extentAcross(hatch, angleOf(hatch, pass)) / hatch.lineSpacing - 1e-9));
}

/** Length of the line at `offset` from the field's centre under that angle: a chord of the rectangle, m. */
export function chordLength({ width, height }: Hatch, angle: number, offset: number): number {
  const { from, to } = chord(width, height, angle, offset);
  return Math.max(0, to - from);
}

/** Where the line along (cos, sin) at `offset` to its left enters and leaves the rectangle, from its foot. */
function chord(width: number, height: number, angle: number, offset: number) {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [along, foot, half] of [
    [c, -s * offset, width / 2],
    [s, c * offset, height / 2],
  ] as const) {
    // Rounding leaves a trace of the other direction at multiples of 90°.
    if (Math.abs(along) < 1e-12) {
      if (Math.abs(foot) > half) return { from: 0, to: 0 };
      continue;
    }
    const ends = [(-half - foot) / along, (half - foot) / along];
    from = Math.max(from, Math.min(...ends));
    to = Math.min(to, Math.max(...ends));
  }
  return { from, to };
}

/** Offset of the line `index`, counted from the lower edge, to the left of its direction. */
export function lineOffset(hatch: Hatch, pass: number, index: number): number {
  return (index - (lineCount(hatch, pass) - 1) / 2) * hatch.lineSpacing;
}

/** Index of the line that is written as the `turn`-th of a pass, both from 0: every n-th line, then those between. */
export function writtenLine(count: number, interlacing: number, turn: number): number {
  const rounds = Math.min(interlacing, count);
  let left = turn;
  for (let round = 0; round < rounds; round++) {
    const inRound = Math.floor((count - 1 - round) / rounds) + 1;
    if (left < inRound) return round + left * rounds;
    left -= inRound;
  }
  return count - 1;
}

/** The line written as the `turn`-th of a pass, both counted from 0; every other one runs back where lines go to and fro. */
export function lineAt(hatch: Hatch, pass: number, turn: number): HatchLine {
  const angle = angleOf(hatch, pass);
  const index = writtenLine(lineCount(hatch, pass), hatch.interlacing, turn);
  const offset = lineOffset(hatch, pass, index);
  const { from, to } = chord(hatch.width, hatch.height, angle, offset);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const end = (at: number) => [at * c - offset * s, at * s + offset * c] as const;
  const back = hatch.directions === 'both' && turn % 2 === 1;
  const [[fromX, fromY], [toX, toY]] = back ? [end(to), end(from)] : [end(from), end(to)];
  return { fromX, fromY, toX, toY, length: Math.max(0, to - from) };
}

/** Passes of a hatch with angles of their own: all of them, or as many spread evenly. */
export function passesWorked(hatch: Pick<Hatch, 'angle' | 'passes'>, most: number): readonly number[] {
  if (hatch.angle === 0 || hatch.passes === 1) return [0];
  const count = Math.min(most, hatch.passes);
  return Array.from({ length: count }, (_, i) => Math.floor(((i + 0.5) * hatch.passes) / count));
}
