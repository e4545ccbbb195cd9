import { describe, expect, it } from 'vitest';
import { createPart, type PartKind } from '../../lib/design/ownParts.ts';
import { readPartsTable } from '../../lib/design/ownPartsTable.ts';

const lens = (name: string, f: number, note = '') =>
  createPart('lens', name, { 'lens.focalLength': f }, note);

describe('table of parts', () => {
  it.each([
    ['commas', 'name,focal length (mm)\n160 mm,160\nScan,100\n'],
    ['semicolons and decimal commas', 'name;focal length (mm)\r\n160 mm;160,0\r\nScan;100\r\n'],
    ['tabs, another unit and the id', '\ufeffName\tlens.focalLength [m]\n160 mm\t0.16\n\nScan\t.1'],
    ['quoted cells', '"name","focal length / cm"\n"160 mm",16\n"Scan",10'],
  ])('reads lenses with %s', (_, text) => {
    expect(readPartsTable('lens', text, 'own.csv')).toEqual({
      parts: [lens('160 mm', 0.16), lens('Scan', 0.1)],
      unknown: [],
    });
  });

  it('takes notes and reports other columns', () => {
    const text = 'name;maker;focal length (mm);note;\nA;home;160;drawer 3;';
    const { parts, unknown } = readPartsTable('lens', text, 'own.csv');
    expect([parts, unknown]).toEqual([[lens('A', 0.16, 'drawer 3')], ['column ‘maker’']]);
  });

  it('reads expanders of both descriptions from one table', () => {
    const text = [
      'name;magnification;focal length of the first lens (mm);distance between the lenses (mm);focal length of the second lens (mm)',
      'Twofold;2;;;',
      'Galilean;;-50;50;100',
    ].join('\n');
    expect(readPartsTable('expander', text, 'own.csv').parts.map(({ values }) => values)).toEqual([
      { 'expander.kind': 'magnification', 'expander.magnification': 2 },
      {
        'expander.kind': 'lenses',
        'expander.firstFocalLength': -0.05,
        'expander.separation': 0.05,
        'expander.secondFocalLength': 0.1,
      },
    ]);
  });

  it('reads plates, choices by their words', () => {
    const text =
      'name;step diameter (mm);made step height (nm);glass of the plate;raised part\nA;10;1144;N-BK7;Ring';
    const [plate] = readPartsTable('plate', text, 'own.csv').parts;
    expect(plate!.values).toEqual({
      'plate.stepDiameter': 0.01,
      'plate.source': 'made',
      'plate.madeHeight': 1.144e-6,
      'plate.glass': 'bk7',
      'plate.raised': 'ring',
    });
  });

  it.each<[string, PartKind, string, RegExp]>([
    ['nothing', 'lens', '\n', /'own\.csv' is empty/],
    [
      'no names',
      'lens',
      'label;focal length (mm)\nA;160',
      /names no column ‘name’\. Begin with .*"name; focal length \(mm\)"/,
    ],
    [
      'no unit',
      'lens',
      'name;focal length\nA;160',
      /column focal length names no unit .*"focal length \(mm\)"/,
    ],
    [
      'another kind of unit',
      'lens',
      'name;focal length (kg)\nA;160',
      /column focal length \(kg\) names no unit/,
    ],
    ['no rows', 'lens', 'name;focal length (mm)', /no row below it\. Add a row for each lens/],
    [
      'no number',
      'lens',
      'name;focal length (mm)\nA;long',
      /'own\.csv': Row 2, column focal length holds "long"/,
    ],
    [
      'a decimal comma between commas',
      'lens',
      'name,focal length (mm)\nA,160,5',
      /Row 2 has 3 columns.*decimal commas/,
    ],
    ['no value', 'lens', 'name;focal length (mm);note\nA;;x', /'own\.csv', row 2: .*is missing/],
    ['no name', 'lens', 'name;focal length (mm)\n\n;160', /'own\.csv', row 3: The name of the lens is empty/],
    ['out of range', 'lens', 'name;focal length (mm)\nA;3000', /row 2: .*not possible; allowed is from/],
    [
      'a name twice',
      'lens',
      'name;focal length (mm)\nA;100\na;100',
      /row 3: The list already has the lens ‘A’/,
    ],
    [
      'a glass that is none',
      'plate',
      'name;step diameter (mm);made step height (nm);glass of the plate;raised part\nA;10;1144;ice;ring',
      /cannot be 'ice'; choose one of: fusedSilica/,
    ],
  ])('refuses %s', (_, kind, text, says) => {
    expect(() => readPartsTable(kind, text, 'own.csv')).toThrow(says);
  });
});
