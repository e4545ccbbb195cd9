/** A file as it was given to an input. */
export interface OriginalFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** SHA-256 of the bytes, hexadecimal: what names them in a saved design. */
  readonly sha256: string;
}

// Beside the values, not in them: what is computed, compared or sent to a worker never carries the bytes along.
const originals = new WeakMap<object, OriginalFile>();

/** Remembers which file a value was read from, so that a saved design can hold it; returns the value. */
export function readFrom<T>(value: T, file: OriginalFile): T {
  if (typeof value === 'object' && value !== null) originals.set(value, file);
  return value;
}

/** The file that a value was read from; undefined for a value that was made otherwise. */
export function originalOf(value: unknown): OriginalFile | undefined {
  return typeof value === 'object' && value !== null ? originals.get(value) : undefined;
}
