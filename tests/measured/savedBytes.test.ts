import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { fromBase64, toBase64 } from '../../lib/measured/base64.ts';
import { sha256 } from '../../lib/measured/sha256.ts';
import { createRandom } from '../../lib/numerics/random.ts';

const ascii = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));
const random = createRandom(41);
const noise = (length: number) => Uint8Array.from({ length }, () => Math.floor(random.between(0, 256)));

describe('SHA-256', () => {
  it.each([
    // FIPS 180-4 example values (NIST, Cryptographic Standards and Guidelines: SHA256.pdf), and of nothing.
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ])('of %j', (text, sum) => expect(sha256(ascii(text))).toBe(sum));

  it('agrees with another program at every length around the ends of blocks, and in a part of a buffer', () => {
    for (const length of [1, 54, 55, 56, 57, 63, 64, 65, 119, 120, 128, 1000, 70_001]) {
      const bytes = noise(length + 3).subarray(3);
      expect(sha256(bytes), `${length}`).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });
});

describe('base64', () => {
  it.each([
    // RFC 4648 §10.
    ['', ''],
    ['f', 'Zg=='],
    ['fo', 'Zm8='],
    ['foo', 'Zm9v'],
    ['foob', 'Zm9vYg=='],
    ['fooba', 'Zm9vYmE='],
    ['foobar', 'Zm9vYmFy'],
  ])('of %j', (text, encoded) => {
    expect(toBase64(ascii(text))).toBe(encoded);
    expect(fromBase64(encoded)).toEqual(ascii(text));
  });

  it('agrees with another program, and comes back', () => {
    for (const length of [12_287, 12_288, 12_289, 50_000]) {
      const bytes = noise(length);
      const text = toBase64(bytes);
      expect(text === Buffer.from(bytes).toString('base64'), `${length}`).toBe(true);
      expect(Buffer.from(fromBase64(text)!).equals(bytes), `${length}`).toBe(true);
    }
  });

  it.each(['Zg', 'Zg=', 'Z===', '====', 'Zg=a', 'Zm9v!mFy', 'Zm9vµmFy', 'Zm 9'])('%j is none', (text) =>
    expect(fromBase64(text)).toBeUndefined(),
  );
});
