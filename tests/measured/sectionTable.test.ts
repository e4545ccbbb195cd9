import { describe, expect, it } from 'vitest';
import { toMetres } from '../../lib/design/causticFile.ts';
import { readSectionTable } from '../../lib/measured/sectionTable.ts';
import { expectClose } from '../close.ts';

/** 24 places 0.5 µm apart and heights in nm. */
const rows = Array.from({ length: 24 }, (_, i) => [0.5 * i, 12 * i - (i > 8 && i < 15 ? 4000 : 0)] as const);
const tableOf = (head: string, row: (x: number, h: number, i: number) => string, end = '\n') =>
  [head, ...rows.map(([x, h], i) => row(x, h, i))].join(end) + end;
const read = (text: string) => readSectionTable(text, toMetres);
const plain = read(tableOf('x (µm);height (nm)', (x, h) => `${x};${h}`));

describe('a table of a cross-section', () => {
  it('gives places and heights in metres, and which way its header says that they count', () => {
    expect(plain.position).toHaveLength(24);
    expectClose(plain.position[23]!, 11.5e-6, { relative: 1e-12 });
    expectClose(plain.height[10]!, -3.88e-6, { relative: 1e-12 });
    expect(plain).toMatchObject({ named: 'height', missing: 0 });
    expect(read(tableOf('x (µm);depth (nm)', (x, h) => `${x};${h}`)).named).toBe('depth');
    expect(read(tableOf('x (µm);z (nm)', (x, h) => `${x};${h}`)).named).toBe('unsaid');
  });

  it.each([
    [
      'millimetres and micrometres',
      tableOf('Distance [mm];Height [µm]', (x, h) => `${x / 1000};${h / 1000}`),
    ],
    ['metres', tableOf('x (m),z (m)', (x, h) => `${x * 1e-6},${h * 1e-9}`)],
    ['nanometres both', tableOf('x (nm)\tz (nm)', (x, h) => `${1000 * x}\t${h}`)],
    ['units in a line of their own', tableOf('x;height\nµm;nm', (x, h) => `${x};${h}`)],
    ['units in brackets below', tableOf('x\theight\n[µm]\t[nm]', (x, h) => `${x}\t${h}`)],
    ['decimal commas', tableOf('x (µm);height (nm)', (x, h) => `${String(x).replace('.', ',')};${h}`)],
    ['Windows line ends', tableOf('x (µm);height (nm)', (x, h) => `${x};${h}`, '\r\n')],
    ['a header behind a comment sign', tableOf('# x (µm); height (nm)', (x, h) => `${x};${h}`)],
    ['spaces', tableOf('x (µm)  height [nm]', (x, h) => `  ${x}   ${h}`)],
    ['spaces and lines under names', tableOf('x_um height_nm', (x, h) => `${x} ${h}`)],
    [
      'what an instrument says of itself before',
      tableOf(
        'Profile, measured 2024-11-03 14:05\nSample: plate 3; groove 7\nPoints;24\n\nx (µm);height (nm)',
        (x, h) => `${x};${h}`,
      ),
    ],
    [
      'a dated line, units below and spaces',
      tableOf('Trace 4 of 9, 03.11.2024\nx\tz\nµm\tnm', (x, h) => `${x}\t${h}`),
    ],
    ['more columns, by name', tableOf('Nr;x (µm);flag;height (nm)', (x, h, i) => `${i};${x};0;${h}`)],
    [
      'more columns, the first two of length',
      tableOf('Nr;a (µm);b (nm);c (nm)', (x, h, i) => `${i};${x};${h};1`),
    ],
    ['height first', tableOf('height (nm);x (µm)', (x, h) => `${h};${x}`)],
    ['x and y', tableOf('x (µm);y (nm)', (x, h) => `${x};${h}`)],
    [
      'rows in any order',
      tableOf('x (µm);height (nm)', (x, h) => `${x};${h}`).replace(/^(x.*\n)(.*\n)(.*\n)/, '$1$3$2'),
    ],
  ])('%s: read alike', (_name, text) => {
    const table = read(text);
    expect(table.position).toHaveLength(24);
    table.position.forEach((x, i) => {
      expectClose(x, plain.position[i]!, { relative: 1e-12, absolute: 1e-20 });
      expectClose(table.height[i]!, plain.height[i]!, { relative: 1e-12, absolute: 1e-20 });
    });
  });

  it.each(['', 'NaN', '***', '---', 'Bad', '#N/A', ' nan '])(
    'a point written as "%s" is left out',
    (missing) => {
      const table = read(tableOf('x (µm);height (nm)', (x, h, i) => `${x};${i % 8 === 3 ? missing : h}`));
      expect(table.missing).toBe(3);
      expect(table.position).toHaveLength(21);
      expect(table.position).not.toContain(plain.position[3]);
      expect(table.height.every(Number.isFinite)).toBe(true);
    },
  );

  it('heights at one place are averaged', () => {
    const twice = read(`${tableOf('x (µm);height (nm)', (x, h) => `${x};${h}`)}2;100\n`);
    expect(twice.position).toHaveLength(24);
    expectClose(twice.height[4]!, (48e-9 + 100e-9) / 2, { relative: 1e-12 });
  });
});
