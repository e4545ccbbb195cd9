import { describe, expect, it } from 'vitest';
import type { PlannedLadder } from '../../lib/design/ladder.ts';
import { readLadderFile } from '../../lib/design/spotFile.ts';
import { ladderPicture } from '../../notebooks/ladderFigure.ts';
import { ladderCsv } from '../../notebooks/ladderTable.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { expectClose } from '../close.ts';
import { outcomesOf } from './designOutcomes.ts';
import { run, succeed } from './runCommand.ts';

const plan = (outcomesOf()('ladder.plan') as { value: PlannedLadder }).value;

describe('a ladder drawn', () => {
  const spec = ladderPicture(plan);

  it('shows every mark to scale, and what is marked from where to where', () => {
    expect(spec.equalScale).toBe(true);
    expect(spec.summary).toMatch(
      /^Places 31\sµm apart, z 33\sµm further from each to the next, read like text; the row with the plate above, that without it below\. As predicted with the plate 33 of 49 places are marked, from z = −0\.528\smm to 0\.528\smm, up to 15(\.\d)?\sµm wide; without the plate 15 of 31 places/,
    );
    const [outer] = spec.series;
    const right = Math.max(...outer!.x.filter((x) => !Number.isNaN(x)));
    const furthest = Math.max(
      ...plan.marks.map(({ x, mark }) => (mark.area > 0 ? x + mark.outerDiameter / 2 : 0)),
    );
    expectClose(right, 1e6 * furthest, { relative: 1e-9 });
  });

  it('says how z rises along a line, and where the focus is expected', () => {
    const { factor, offset = 0 } = spec.secondX!;
    expect(offset).toBe(0);
    const [first, ...line] = plan.marks.slice(0, 13);
    for (const { x, reading } of line)
      expectClose(1e6 * x * factor, 1e3 * (reading - first!.reading), { relative: 1e-9 });
    const expected = spec.series.at(-1)!;
    expect(expected.label).toBe('focus expected, z = 0\u202fmm');
    const middles = plan.marks.filter((mark) => Math.abs(mark.reading) < 1e-9);
    expect([...expected.x].filter((x) => !Number.isNaN(x))).toEqual(middles.map(({ x }) => 1e6 * x));
  });

  it('its file is the table to fill in', () => {
    const table = figureCsv(spec).trimEnd().split('\r\n');
    expect(table).toEqual(ladderCsv(plan).trimEnd().split('\r\n').slice(3));
    expect(table[0]).toBe(
      'mark,x on coupon (mm),y on coupon (mm),plate,energy (µJ),average power (mW),z (mm),predicted diameter (µm),predicted inner diameter (µm),predicted area (µm²),dx (µm),dy (µm),inner diameter (µm),remark',
    );
    expect(table[1]).toMatch(/^1,0,0.217,1,0\.704,140\.8,-0\.792,0,0,0,,,,$/);
  });
});

describe('a ladder that comes back', () => {
  it('is read with its plate, energies and readings, as it was planned', () => {
    const filled = ladderCsv(plan)
      .split('\r\n')
      .map((line) => {
        const cells = line.split(',');
        if (!/^\d+$/.test(cells[0]!)) return line;
        const [predicted, inner] = [cells[7]!, Number(cells[8]) > 0 ? cells[8]! : ''];
        return [...cells.slice(0, 10), predicted, '', inner, ''].join(',');
      })
      .join('\r\n');
    const { rows, bad, unmeasured, ignored } = readLadderFile(filled, 'filled.csv');
    expect([bad, unmeasured]).toEqual([[], []]);
    expect(ignored).not.toContain('plate');
    rows.forEach(({ plate, energy, z, area }, i) => {
      const mark = plan.marks[i]!;
      expect(plate).toBe(mark.plate);
      expectClose(energy!, mark.energy, { relative: 1e-9 });
      // Readings are written to a nanometre, diameters to six digits.
      expectClose(z!, mark.reading, { absolute: 1e-9 });
      expectClose(area, mark.mark.area, { relative: 1e-4, absolute: 1e-16 });
    });
  });

  it('is still to be measured while it is empty', () => {
    expect(readLadderFile(ladderCsv(plan), 'empty.csv').unmeasured).toHaveLength(80);
  });
});

describe('plan ladder', () => {
  it('writes the table on the output, or into a file and says what', () => {
    const text = succeed([
      'plan',
      'ladder',
      'data/designs/rain-gauge-funnel.json',
      '--set',
      'ladder.rows=with',
    ]);
    expect(text).toMatch(/^\uFEFF# Focus ladder of the design: Rain-gauge funnel\.\r\n/);
    expect(text.split('\r\n')).toHaveLength(5 + 35 + 1);
    const { code, out, written } = run(['plan', 'ladder', '--out', 'ladder.csv']);
    expect([code, out]).toEqual([0, expect.stringMatching(/^ladder\.csv: 80 marks, 31\sµm apart\.\n$/)]);
    expect(written['ladder.csv']).toBeDefined();
  });

  it.each([
    [
      ['plan', 'stairs'],
      /'plan stairs' is not known; use plan coupon DESIGN\.json or plan ladder DESIGN\.json/,
    ],
    [['plan', 'ladder', '--set', 'ladder.doubt=5mm'], /61 are the most/],
  ])('%j is refused', (argv, says) => {
    const { code, err } = run(argv);
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });
});

describe('a measured ladder on the command line', () => {
  // A Gaussian of zR = 131.1 µm at twice its threshold: D² = 2w² ln(2/(1 + ζ²)), in the focus at 5 mm.
  const rows = [-0.9, -0.6, -0.3, 0, 0.3, 0.6, 0.9].map((zeta) => {
    const diameter = 6.557 * Math.sqrt(2 * (1 + zeta ** 2) * Math.log(2 / (1 + zeta ** 2)));
    return `${5 + 0.1311437 * zeta};${diameter};out;0.27`;
  });
  const files = { 'ladder.csv': ['z (mm);d (µm);plate;E (µJ)', ...rows].join('\n') };

  it('gives the zero for the design and the table named', () => {
    const argv = ['evaluate', '--ladder', 'ladder.csv', '--set', 'plate.stop=open', '--get', 'ladder.zero'];
    const { value, unit } = JSON.parse(succeed(argv, files))['ladder.zero'];
    expect(unit).toBe('m');
    // To a hundredth of a Rayleigh length; marks without scatter.
    expectClose(value, 5e-3, { absolute: 1.3e-6 });
  });
});
