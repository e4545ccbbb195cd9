/** Told in the middle of long work: the part of it that is done, 0…1. */
export type Progress = (part: number) => void;

/** Progress of work that makes up the part from `from` to `to` of the whole; undefined where nobody listens. */
export function portion(whole: Progress | undefined, from: number, to: number): Progress | undefined {
  return whole && ((part) => whole(from + (to - from) * part));
}
