import { Problem } from '../problem.ts';

/** Beyond e^±300 a number or its interval says nothing of a mark, and e^±710 is none any more. */
const largestLog = 300;

/** Throws Problem 'impossible' where marks leave the ends of an interval of logarithms open by more than a number holds. */
export function requireClosed(...ends: readonly number[]): void {
  if (ends.every((end) => Math.abs(end) < largestLog)) return;
  throw new Problem(
    'impossible',
    'The marks leave the threshold open: energies and sizes do not go together as those of one spot. Check their columns and units, and leave out marks of another kind.',
  );
}
