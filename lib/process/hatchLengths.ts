import { chordLength, type Hatch, lineCount, lineOffset, passesWorked } from './hatch.ts';

/** Lines of a pass, and how long they are. */
export interface PassLengths {
  /** Passes that it stands for. */
  readonly passes: number;
  readonly lines: number;
  /** Lengths of equal shares of the lines, m; one where all are alike. */
  readonly lengths: Float64Array;
  readonly mean: number;
}

/** Lines of unequal length that are taken one by one; of more, as many strips are. */
const strips = 400;
/** Passes at angles of their own that are worked out; of more, as many spread over all. */
const mostPasses = 180;

/** Lengths follow from the hatch alone, and times at many speeds ask for them. */
const known = new WeakMap<Hatch, readonly PassLengths[]>();

/** Lengths of the lines of all passes, to 1e-4; worked out once a hatch, which must not change. */
export function lengthsOf(hatch: Hatch): readonly PassLengths[] {
  const found = known.get(hatch);
  if (found !== undefined) return found;
  const worked = passesWorked(hatch, mostPasses);
  const all = worked.map((pass) => lengthsOfPass(hatch, pass, hatch.passes / worked.length));
  known.set(hatch, all);
  return all;
}

function lengthsOfPass(hatch: Hatch, pass: number, passes: number): PassLengths {
  const lines = lineCount(hatch, pass);
  const parts = pass * hatch.angle === 0 ? 1 : Math.min(lines, strips);
  // The middle of each strip of lines: their lengths change along straight pieces.
  const lengths = Float64Array.from({ length: parts }, (_, part) => {
    const index = ((part + 0.5) * lines) / parts - 0.5;
    return chordLength(hatch, pass * hatch.angle, lineOffset(hatch, pass, index));
  });
  return { passes, lines, lengths, mean: lengths.reduce((sum, one) => sum + one, 0) / parts };
}
