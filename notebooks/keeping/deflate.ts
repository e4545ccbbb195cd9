/** Compressed by the deflate method (RFC 1951), without a header. */
export function deflate(bytes: Uint8Array): Promise<Uint8Array> {
  return through(bytes, new CompressionStream('deflate-raw'), Number.POSITIVE_INFINITY);
}

/**
 * Undoes `deflate`; rejects where the bytes are none such. Stops and rejects beyond `most` bytes: a few of them can
 * unfold to gigabytes.
 */
export function inflate(bytes: Uint8Array, most: number): Promise<Uint8Array> {
  return through(bytes, new DecompressionStream('deflate-raw'), most);
}

async function through(
  bytes: Uint8Array,
  { readable, writable }: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> {
  const writer = writable.getWriter();
  // What is wrong with the bytes is told by the reader as well.
  writer.write(bytes as Uint8Array<ArrayBuffer>).catch(() => {});
  writer.close().catch(() => {});
  const reader = readable.getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    parts.push(next.value);
    length += next.value.length;
    if (length <= most) continue;
    reader.cancel().catch(() => {});
    throw new RangeError(`more than ${most} bytes`);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
