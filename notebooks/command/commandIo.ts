/** What the command line may touch: files to read, and two streams. */
export interface CommandIo {
  /** Bytes of a file; throws when it cannot be read. */
  readFile(path: string): Uint8Array;
  out(text: string): void;
  err(text: string): void;
}
