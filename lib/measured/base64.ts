const signs = Uint8Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/', (sign) =>
  sign.charCodeAt(0),
);
const values = new Uint8Array(128).fill(255);
signs.forEach((sign, i) => {
  values[sign] = i;
});

/** Bytes as base64 with padding (RFC 4648 §4). */
export function toBase64(bytes: Uint8Array): string {
  const parts: string[] = [];
  // In parts, since a function takes some ten thousand arguments at most.
  const length = 3 * 2048;
  for (let from = 0; from < bytes.length; from += length)
    parts.push(String.fromCharCode(...encode(bytes.subarray(from, from + length))));
  return parts.join('');
}

/** Codes of the signs; the last one or two are '=' where bytes lack. */
function encode(bytes: Uint8Array): Uint8Array {
  const codes = new Uint8Array(Math.ceil(bytes.length / 3) * 4);
  for (let i = 0, j = 0; i < bytes.length; i += 3) {
    const word = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    for (let shift = 18; shift >= 0; shift -= 6) codes[j++] = signs[(word >> shift) & 63]!;
  }
  const lacking = codes.length === 0 ? 0 : (3 - (bytes.length % 3)) % 3;
  return codes.fill(61, codes.length - lacking);
}

/** Bytes of a base64 text with padding; undefined where it is none. */
export function fromBase64(text: string): Uint8Array | undefined {
  if (text.length % 4 !== 0) return undefined;
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  const digits = text.length - padding;
  for (let i = 0, j = 0; i < text.length; i += 4) {
    let word = 0;
    for (let k = i; k < i + 4; k++) {
      const value = k < digits ? (values[text.charCodeAt(k)] ?? 255) : 0;
      if (value === 255) return undefined;
      word = (word << 6) | value;
    }
    for (let shift = 16; shift >= 0 && j < bytes.length; shift -= 8) bytes[j++] = (word >> shift) & 255;
  }
  return bytes;
}
