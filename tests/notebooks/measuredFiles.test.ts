import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { inputForFile } from '../../notebooks/measuredFiles.ts';

const folder = new URL('../../data/measured/', import.meta.url);
const files = readdirSync(folder).filter((name) => /\.(png|tif|csv)$/.test(name));

describe('a file of unknown kind finds its input', () => {
  it('there are files to try', () => expect(files.length).toBeGreaterThan(5));
  for (const name of files) {
    it(name, () => {
      const expected = name.endsWith('.csv') ? 'laser.causticTable' : 'laser.beamImage';
      expect(inputForFile(new Uint8Array(readFileSync(new URL(name, folder))))).toBe(expected);
    });
  }
});
