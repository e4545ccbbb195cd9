import { describe, expect, test } from 'vitest';
import { citation, isKnownSource, sourceKeys } from '../../lib/materials/bibliography.ts';

describe('bibliography', () => {
  test.each([
    ['milam1998', 'D. Milam, Appl. Opt. 37, 546 (1998) (memory)'],
    [
      'ustinov2017',
      'A. V. Ustinov, Computer Optics 41(4), 515–520 (2017), DOI 10.18287/2412-6179-2017-41-4-515-520 (abstract read)',
    ],
    ['collett1978', 'E. Collett & E. Wolf, Opt. Lett. 2, 27 (1978) (memory)'],
    ['bornwolf', 'M. Born & E. Wolf, Principles of Optics, ch. 8 (memory)'],
    ['iso13694', 'ISO 13694:2018 (memory)'],
    ['common practice', 'common practice, no source'],
  ])('%s: %s', (key, text) => {
    expect(citation(key)).toBe(text);
  });

  test('every key gives a text, unknown keys a problem', () => {
    for (const key of sourceKeys()) expect(citation(key)).toMatch(/\w{3}/);
    for (const key of ['memory', 'computed', 'definition']) expect(isKnownSource(key)).toBe(true);
    for (const key of ['', 'nobody1900', 'constructor']) {
      expect(isKnownSource(key)).toBe(false);
      expect(() => citation(key)).toThrow(expect.objectContaining({ kind: 'absent' }));
    }
  });
});
