import { Problem } from '../problem.ts';

/** The problem of a picture without a mark. */
export function nothingStandsOut(name: string): Problem {
  return new Problem(
    'absent',
    `Nothing stands out from the frame of "${name}" or of the region chosen in it: no mark is there, or it fills the frame. Choose a region with one mark and its surroundings, or take a picture with more contrast.`,
  );
}
