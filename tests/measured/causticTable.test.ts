import { describe, expect, it } from 'vitest';
import { readCausticTable } from '../../lib/measured/causticTable.ts';
import { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';
import { toMetres } from './toMetres.ts';

const read = (text: string) => readCausticTable(text, toMetres);

describe('readCausticTable', () => {
  it.each([
    ['points and commas', 'z (mm),d (µm)\n1.5,300\n2.5,310.5\n'],
    ['decimal commas and semicolons', 'z (mm);d (µm)\n1,5;300\n2,5;310,5\n'],
    ['tabs, CRLF and a byte order mark', '\uFEFFz [mm]\tdiameter [um]\r\n1.5\t300\r\n\r\n2.5\t310.5\r\n'],
    ['slashes', 'z / mm;d / µm\n1,5;300\n2,5;310,5'],
    ['underscores', 'z_mm,d_um\n1.5,300\n2.5,310.5'],
    ['words and quotes', '"position in mm";"beam diameter in µm"\n1,5;300\n2,5;310,5'],
    [
      'columns in another order, with others between',
      'no,diameter (mm),note,z (cm)\n1,0.3,first,0.15\n2,0.3105,,0.25',
    ],
    ['radii, doubled', 'z (mm),w (um)\n1.5,150\n2.5,155.25'],
    ['spaces', 'z_mm d_um\n1.5 300\n  2.5   310.5\n'],
  ])('%s', (_name, text) => {
    const { z, diameter } = read(text);
    [1.5e-3, 2.5e-3].forEach((value, i) => {
      expectClose(z[i]!, value, { relative: 1e-14 });
    });
    [300e-6, 310.5e-6].forEach((value, i) => {
      expectClose(diameter[i]!, value, { relative: 1e-14 });
    });
  });

  it.each([
    ['', /is empty/, undefined],
    ['z (mm),d (um)\n', /no row below/, 2],
    ['z (mm),d (um)\n1,200\n2,wide\n', /Row 3, column d \(um\) holds "wide"/, 3],
    ['z (mm),d (um)\n\n1,200\n2\n', /Row 4, column d \(um\) is empty/, 4],
    ['z (mm),d (um)\n1,-200\n', /Row 2, column d \(um\) holds -200/, 2],
    ['z (mm),d (um)\n1,5,200,5\n', /Row 2 has 4 columns where the header has 2.*semicolons/, 2],
    ['z (mm);d (um)\n1,5;1.200,5\n', /Row 2, column d \(um\) holds "1.200,5"/, 2],
    ['z (mm);d (um)\n1,5;1e999\n', /Row 2, column d \(um\) holds "1e999"/, 2],
    ['z (km),d (um)\n1e307,200\n', /Row 2, column z \(km\) holds 1e\+307, which is beyond reach/, 2],
    ['z,d (um)\n1,200\n', /Row 1, column z names no unit/, 1],
    ['z (mm),height (um)\n1,200\n', /no column for diameter/, 1],
    ['1,200\n2,300\n', /no column for z/, 1],
  ])('refuses %j', (text, message, row) => {
    expect(() => read(text)).toThrow(message);
    try {
      read(text);
    } catch (error) {
      expect(error).toBeInstanceOf(Problem);
      expect((error as Problem).kind).toBe('unreadable');
      expect((error as Problem).parts.row).toBe(row);
    }
  });
});
