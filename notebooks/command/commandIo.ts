/** What the command line may touch: files, and two streams. */
export interface CommandIo {
  /** Bytes of a file; throws when it cannot be read. */
  readFile(path: string): Uint8Array;
  /** Writes a file, in place of one that is there; throws when it cannot. */
  writeFile(path: string, bytes: Uint8Array): void;
  out(text: string): void;
  err(text: string): void;
}
