import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { expectClose } from '../close.ts';
import { run, succeed } from './runCommand.ts';

const span = ['--z', '-0.2:0.1 mm', '--radii', '0:30 um', '--size', '7x4'];
const planes = [-2e-4, -1e-4, 0, 1e-4];
const radii = Array.from({ length: 7 }, (_, i) => i * 5e-6);
const design = ['--set', 'laser.beamPropagationRatio=1.2', '--set', 'lens.plateDistance=30 mm'];

/** Fluence in J/m², a row a plane, as `profile` writes it. */
const expected = planes.map((z) =>
  succeed(['profile', ...design, '--z', String(z), '--radii', '0:30:7 um'])
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => Number(line.split(',')[3])),
);
const top = Math.max(...expected.flat());

function written(...more: string[]) {
  const { code, out, err, written } = run(['map', ...design, ...span, ...more]);
  expect([code, err]).toEqual([0, '']);
  const [[path, bytes]] = Object.entries(written) as [[string, Uint8Array]];
  return { out, path, bytes };
}

function readMatrix(text: string) {
  const [head, ...lines] = text
    .trimEnd()
    .split('\n')
    .map((line) => line.split(','));
  expect(head![0]).toBe('fluence_J_m2; z_m down; radius_m across');
  return {
    radii: head!.slice(1).map(Number),
    planes: lines.map(([z]) => Number(z)),
    rows: lines.map((cells) => cells.slice(1).map(Number)),
  };
}

function expectFamily(text: string): void {
  const matrix = readMatrix(text);
  const near = { relative: 1e-7, source: 'eight digits are written' };
  expect(matrix.planes).toHaveLength(4);
  matrix.radii.forEach((radius, i) => {
    expectClose(radius, radii[i]!, near);
  });
  matrix.planes.forEach((z, row) => {
    expectClose(z, planes[row]!, { ...near, absolute: 1e-18 });
    matrix.rows[row]!.forEach((fluence, column) => {
      expectClose(fluence, expected[row]![column]!, { ...near, absolute: 1e-9 * top });
    });
  });
}

describe('map as CSV', () => {
  it('is what profile writes plane by plane, M² and the place of the plate included', () => {
    expectFamily(succeed(['map', ...design, ...span]));
  });

  it('goes into a file, and the output says what it holds', () => {
    const { out, path, bytes } = written('--out', 'family.csv');
    expect(path).toBe('family.csv');
    expectFamily(new TextDecoder().decode(bytes));
    expect(out).toMatch(
      /^family\.csv: 7 radii \(columns, 0\sµm to 30\sµm\) by 4 planes \(rows from the top, z −0\.2\smm to 0\.1\smm\); the highest fluence is [\d.]+\sJ\/cm²\.\n$/,
    );
  });

  it('has 512 radii and 401 planes where no size is given', () => {
    const matrix = readMatrix(succeed(['map', '--z', '-0.5:0.5 mm', '--radii', '0:40 um']));
    expect([matrix.radii.length, matrix.planes.length]).toEqual([512, 401]);
    expect(matrix.rows.every((row) => row.length === 512 && row.every((x) => x >= 0))).toBe(true);
  });

  it('takes radii on both sides of the axis', () => {
    const matrix = readMatrix(succeed(['map', '--z', '0:0.1 mm', '--radii', '-20:20 um', '--size', '5x2']));
    for (const row of matrix.rows) expect(row).toEqual([...row].reverse());
  });
});

describe('map as a picture of 16 bits', () => {
  it('in proportion: grey over white is fluence over the highest one', () => {
    const { out, bytes } = written('--out', 'family.PNG');
    const { width, height, depth, channels, data, text } = decode(bytes, { checkCrc: true });
    expect([width, height, depth, channels]).toEqual([7, 4, 16, 1]);
    expect(Math.max(...data)).toBe(65535);
    expected.flat().forEach((fluence, i) => {
      expectClose(data[i]!, (fluence / top) * 65535, { absolute: 0.501, source: 'rounding' });
    });
    const [, said] = /^fluence = grey \/ 65535 \* (\S+) J\/m2$/.exec(text['Scale']!)!;
    // A map is computed to 1e-6 of the unshaped peak, which is below ten times this one; profile to 1e-9.
    expectClose(Number(said), top, { relative: 1e-5, source: 'familyMap' });
    expect(text['Rows']).toBe('z = -0.0002 m (top) to 0.0001 m, equally spaced');
    expect(text['Columns']).toBe('radius = 0 m (left) to 0.00003 m, equally spaced');
    expect(out).toMatch(/white \(65535\) stands for [\d.]+\sJ\/cm², grey is in proportion\.\n$/);
  });

  it('logarithmic: four decades below the peak', () => {
    const { out, bytes } = written('--out', 'family.png', '--scale', 'log');
    const { data, text } = decode(bytes, { checkCrc: true });
    expected.flat().forEach((fluence, i) => {
      const share = Math.max(0, 1 + Math.log10(fluence / top) / 4);
      expectClose(data[i]!, share * 65535, { absolute: 0.501, source: 'rounding' });
    });
    expect(text['Scale']).toMatch(/^fluence = 10\^\(4 \* \(grey \/ 65535 - 1\)\) \* \S+ J\/m2, 0 stands/);
    expect(out).toMatch(/black for 10⁻⁴ of it and less, grey for the logarithm\.\n$/);
  });
});
