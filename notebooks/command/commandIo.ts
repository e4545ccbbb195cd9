import type { Problem } from '../../lib/problem.ts';

/** What the command line may touch: files, and two streams. */
export interface CommandIo {
  /** Bytes of a file; throws when it cannot be read. */
  readFile(path: string): Uint8Array;
  /** Writes a file, in place of one that is there; throws when it cannot. */
  writeFile(path: string, bytes: Uint8Array): void;
  out(text: string): void;
  err(text: string): void;
}

/** Output of a command that could not do all of what was asked, and why. */
export interface PartlyDone {
  readonly out: string;
  readonly problem: Problem;
}
