import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';

/** A rectangular field about the axis of the lens, edge to edge, metres. */
export interface FieldSize {
  /** Along the lines of the first pass. */
  readonly width: number;
  readonly height: number;
}

/** Diameter of a spot as pulses are counted by: 2√(2A_eff/π), which is the 1/e² diameter of a Gaussian. */
export function countingDiameter({ effectiveArea }: Pick<Spot, 'effectiveArea'>): number {
  return 2 * Math.sqrt((2 * effectiveArea) / Math.PI);
}

/** A length in words; rooms below the graph know no units. */
function show(length: number): string {
  const rounded = Number(length.toPrecision(3));
  return rounded < 1e-3
    ? `${Number((rounded * 1e6).toPrecision(3))}\u202fµm`
    : `${Number((rounded * 1e3).toPrecision(3))}\u202fmm`;
}

/**
 * Throws an `impossible` Problem where the field is narrower or lower than the spot: then there is no field, only a spot
 * or a line. A side as long as the spot is wide passes.
 */
export function checkField(field: FieldSize, spot: Pick<Spot, 'effectiveArea'>): void {
  const diameter = countingDiameter(spot);
  const smaller = (['width', 'height'] as const).find((side) => field[side] < diameter);
  if (smaller === undefined) return;
  throw new Problem(
    'impossible',
    `The ${smaller} of the field, ${show(field[smaller])}, is smaller than the spot of ${show(diameter)}: there is no field to scan. Make it larger, or bring the workpiece nearer to the focus for a smaller spot.`,
    {
      input: smaller === 'width' ? 'scan.fieldWidth' : 'scan.fieldHeight',
      value: show(field[smaller]),
      allowed: `${show(diameter)} or more`,
    },
  );
}
