import { describe, expect, it } from 'vitest';
import { makeMeasured } from '../../data/measured/make.ts';
import { readCausticFile } from '../../lib/design/causticFile.ts';
import { causticTable } from '../../lib/design/measuredCaustic.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { decodeText } from '../../notebooks/fileText.ts';
import { inputForFile, measuredFiles } from '../../notebooks/measuredFiles.ts';
import { expectClose } from '../close.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const wide = (text: string) => Uint8Array.from(Buffer.from(`\uFEFF${text}`, 'utf16le'));
const table = 'z (mm);d (µm)\n1;300\n2;250\n3;230\n4;255\n5;310\n6;390\n';

/** Made once: the images take seconds. */
const made = makeMeasured();
/** Those of raw beams and their marks; a micrograph looks like any grey picture. */
const invented = Object.entries(made).filter(([name]) => !/^lecture-table|ripples/.test(name));

describe('the kind of a file that only says it was measured', () => {
  it.each(invented)('%s', (name, bytes) => {
    const kinds = {
      caustic: 'laser.causticTable',
      spots: 'threshold.spotTable',
      ladder: 'ladder.table',
      periods: 'ripples.series',
      section: 'groove.sectionFile',
      beam: 'laser.beamImage',
    };
    const expected = Object.entries(kinds).find(([kind]) => name.includes(kind))![1];
    expect(inputForFile(bytes)).toBe(expected);
    const patch = measuredFiles[expected]!.read(bytes, name);
    expect((patch[expected] as { name: string }).name).toBe(name);
  });

  it.each([
    ['grey values', encode('0,1,2\n100,200,255\n'), 'laser.beamImage'],
    ['grey values with exponents', encode('1e-3;2E3\n4;5\n'), 'laser.beamImage'],
    ['grey values in UTF-16', wide('0\t1\t2\n100\t200\t255\n'), 'laser.beamImage'],
    ['nothing', new Uint8Array(0), 'laser.beamImage'],
    ['a table', encode(table), 'laser.causticTable'],
    ['a table below an empty line', encode(`\r\n${table}`), 'laser.causticTable'],
    ['a table in UTF-16', wide(table), 'laser.causticTable'],
  ])('%s', (_name, bytes, input) => {
    expect(inputForFile(bytes)).toBe(input);
  });
});

describe('the text of a file', () => {
  it('is the same in every code that laboratory programs write', () => {
    const utf16 = wide(table);
    const swapped = utf16.map((_, i) => utf16[i ^ 1]!);
    const windows = Uint8Array.from(table, (sign) => sign.charCodeAt(0));
    const read = (bytes: Uint8Array) => readCausticFile(decodeText(bytes), 'table.csv');
    for (const bytes of [utf16, swapped, windows]) expect(read(bytes)).toEqual(read(encode(table)));
    expectClose(read(encode(table)).diameter[0]!, 300e-6, { relative: 1e-12 });
  });
});

describe('a file as a change of the design', () => {
  it('chooses itself as the source, in one patch', () => {
    expect(measuredFiles['laser.causticTable']!.read(encode(table), 'a.csv')).toMatchObject({
      'laser.causticTable': { name: 'a.csv' },
      'laser.ratioSource': 'measured',
    });
    expect(measuredFiles['laser.beamImage']!.read(encode('0,1\n2,3\n'), 'b.csv')).toMatchObject({
      'laser.beamImage': { name: 'b.csv', width: 2 },
      'laser.beamSource': 'measured',
    });
  });

  it('is shown by its name', () => {
    const value = readCausticFile(table, 'a.csv');
    expect(shownValue(causticTable, { value })).toBe('a.csv, 6 places');
    expect(shownValue(causticTable, { value: null })).toBe('none');
  });

  it('is laid over where it is a measured spot or a caustic of the focus', () => {
    const read = (id: string, name: string, bytes = made[name]!) => measuredFiles[id]!.read(bytes, name)[id];
    expect(read('spot.measuredProfile', 'lecture-table-profile.csv')).toMatchObject({
      axis: 'line',
      image: null,
    });
    expect(read('spot.measuredProfile', 'lecture-table-spot.png')).toMatchObject({
      axis: 'picture',
      image: { width: 320, height: 300 },
    });
    const grey = encode(Array.from({ length: 12 }, () => '0,1,2,3,4,5,6,7,8,9').join('\n'));
    expect(read('spot.measuredProfile', 'grey.csv', grey)).toMatchObject({ axis: 'picture' });
    const focus = read('focus.measuredCaustic', 'lecture-table-focus.csv') as { diameterY: number[] };
    expect(focus.diameterY).toHaveLength(13);
    expect(read('focus.measuredCaustic', 'one.csv', encode(table))).toMatchObject({ diameterY: [] });
  });

  it.each([
    [
      'spot.measuredProfile',
      'a.csv',
      encode(table),
      /^"a\.csv" is no profile of the spot but the table of a caustic/,
    ],
    [
      'spot.measuredProfile',
      'b.csv',
      encode('0,1\n1,2\n2,3\n'),
      /^"b\.csv" is no profile of the spot: Row 1 holds "0", "1", no column for the position/,
    ],
    ['spot.measuredProfile', 'c.pdf', encode('%PDF-1.4\n'), /^"c\.pdf" is no profile of the spot/],
    ['spot.measuredProfile', 'd.csv', new Uint8Array(0), /^"d\.csv" is empty/],
    [
      'spot.measuredProfile',
      'e.csv',
      encode('  \n'),
      /^"e\.csv" is no profile of the spot: The table is empty/,
    ],
    ['spot.measuredProfile', 'f.xls', Uint8Array.of(0xd0, 0xcf, 0, 0), /^"f\.xls" is no text/],
    ['focus.measuredCaustic', 'g.png', made['lecture-table-spot.png']!, /^"g\.png" is no text/],
    [
      'focus.measuredCaustic',
      'h.csv',
      made['lecture-table-profile.csv']!,
      /^"h\.csv" .* but a profile of the spot.*measured profile\.$/,
    ],
    [
      'focus.measuredCaustic',
      'i.csv',
      encode('z (mm);dx (µm)\n1;2\n'),
      /^"i\.csv" .* no column for diameter along y/,
    ],
    [
      'laser.causticTable',
      'j.csv',
      made['lecture-table-profile.csv']!,
      /^"j\.csv" .* but a profile of the spot/,
    ],
  ])('%s refuses %s with the reason', (id, name, bytes, says) => {
    expect(() => measuredFiles[id]!.read(bytes, name)).toThrow(says);
  });

  it('is refused with its name where it is of the other kind', () => {
    const image = invented.find(([name]) => name === 'clipped-beam.png')![1];
    expect(() => measuredFiles['laser.causticTable']!.read(image, 'c.png')).toThrow(/^"c\.png" is no text/);
    expect(() => measuredFiles['laser.beamImage']!.read(encode(table), 'd.csv')).toThrow(
      /^"d\.csv" is no camera image but the table of a caustic/,
    );
  });
});
