import { describe, expect, it } from 'vitest';
import type { PlannedCoupon } from '../../lib/design/coupon.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { couponPicture } from '../../notebooks/couponFigure.ts';
import { couponCsv } from '../../notebooks/couponTable.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';
import { run, succeed } from './runCommand.ts';

const design: Values = {
  'threshold.source': 'typed',
  'threshold.typedFluence': 2000,
  'threshold.incubationExponent': 0.85,
  'coupon.lowEnergy': 2e-6,
  'coupon.highEnergy': 40e-6,
  'coupon.energyCount': 5,
  'coupon.mostPulses': 10,
  'coupon.pulseCount': 2,
  'coupon.repeats': 2,
};
const planOf = (more: Values = {}) =>
  (outcomesOf({ ...design, ...more })('coupon.plan') as { value: PlannedCoupon }).value;
const plan = planOf();
const csv = couponCsv(plan);

/** The table as somebody fills it in who sees what was predicted; `cell` writes the numbers. */
function filled(text: string, cell = (value: string) => value): string {
  return text
    .trimEnd()
    .split(/\r?\n/)
    .map((line) => {
      const cells = line.split(',');
      const predicted = cells[7];
      if (cells.length < 14 || !/^\d/.test(predicted!)) return line;
      const inner = Number(cells[8]) > 0 ? cells[8]! : '';
      return [...cells.slice(0, 10), predicted!, '', inner, ''].map(cell).join(',');
    })
    .join('\n');
}

describe('a coupon as a table', () => {
  it('comes back filled through the reader of measured spots, as it was predicted', () => {
    const { rows, bad, unmeasured } = readSpotFile(filled(csv), 'filled.csv');
    expect(bad).toEqual([]);
    expect(unmeasured).toEqual([]);
    expect(rows).toHaveLength(plan.spots.length);
    let whole = 0;
    rows.forEach(({ energy, area, pulses, z }, i) => {
      const spot = plan.spots[i]!;
      expectClose(energy!, spot.energy, { relative: 1e-12 });
      expectClose(z!, spot.z, { absolute: 1e-12 });
      expect(pulses).toBe(spot.pulses);
      // A round spot: the discs of outer contour and unmarked centre, written to six digits. Where a ring of the halo is
      // marked as well, the gap inside it is in no diameter.
      const { outerDiameter, innerDiameter } = spot.mark;
      const disc = (Math.PI / 4) * (outerDiameter ** 2 - innerDiameter ** 2);
      const gapless = disc < spot.mark.area * 1.0001;
      if (gapless) whole += 1;
      expectClose(area, gapless ? spot.mark.area : disc, {
        relative: 1e-4,
        absolute: 1e-16,
        source: 'coupon.plan',
      });
    });
    expect(whole).toBeGreaterThan(rows.length / 2);
  });

  it('is still to be measured while it is empty, and in part where it is filled in part', () => {
    expect(() => readSpotFile(csv, 'empty.csv').rows).not.toThrow();
    expect(readSpotFile(csv, 'empty.csv').unmeasured).toHaveLength(plan.spots.length);
    const lines = filled(csv).split('\n');
    const part = [...lines.slice(0, 8), ...csv.split('\r\n').slice(8)].join('\r\n');
    const { rows, unmeasured } = readSpotFile(part, 'part.csv');
    expect([rows.length, unmeasured.length]).toEqual([5, plan.spots.length - 5]);
  });

  it('survives a spreadsheet of decimal commas and semicolons, which quotes its comments', () => {
    const german = filled(csv)
      .replaceAll(',', ';')
      .replaceAll('.', ',')
      .replace(/^\uFEFF(#.*)$/m, '"$1";;;;');
    const plain = readSpotFile(filled(csv), 'a.csv').rows;
    expect(readSpotFile(german, 'b.csv').rows).toEqual(plain);
  });

  it('is the file of its drawing as well', () => {
    const spec = couponPicture(plan);
    const table = figureCsv(spec).trimEnd().split('\r\n');
    expect(table).toEqual(csv.trimEnd().split('\r\n').slice(2));
    expect(spec.equalScale).toBe(true);
    expect(spec.summary).toMatch(/^60 spots, .* apart|^60 spots, /);
    const outer = spec.series[0]!;
    const largest = Math.max(...plan.spots.map(({ mark }) => mark.outerDiameter));
    const last = [...outer.x].filter((x) => !Number.isNaN(x));
    expectClose(Math.max(...last), 1e3 * (4 * plan.pitch + largest / 2), { relative: 1e-3 });
  });

  it('gives the power of each energy, or what the attenuator lets through', () => {
    const power = plan.settings[0]! / plan.grid.energies[0]!;
    expectClose(power, 200e3, { relative: 1e-12, source: 'laser.repetitionRate' });
    const part = planOf({ 'coupon.setting': 'attenuator', 'coupon.fullEnergy': 80e-6 });
    expect(couponCsv(part)).toMatch(/,attenuator \(%\),/);
    expectClose(part.settings.at(-1)!, 0.5, { relative: 1e-12 });
    expect(readSpotFile(filled(couponCsv(part)), 'a.csv').bad).toEqual([]);
  });
});

describe('a coupon that cannot be', () => {
  it.each([
    [
      { 'coupon.setting': 'attenuator', 'coupon.fullEnergy': 20e-6 },
      /wants 40.µJ, and the open attenuator lets 20.µJ/,
    ],
    [{ 'coupon.lastZ': 0.05 }, /The plane of the coupon at z = .* cannot be predicted/],
    [{ 'threshold.floor': 5000 }, /lies above that of one pulse/],
  ])('%j', (more, says) => {
    const { problem } = outcomesOf({ ...design, ...more })('coupon.plan') as { problem: { message: string } };
    expect(problem.message).toMatch(says);
  });
});

describe('plan coupon', () => {
  it('writes the table on the output, or into a file and says what', () => {
    const text = succeed([
      'plan',
      'coupon',
      'data/designs/rain-gauge-funnel.json',
      '--set',
      'coupon.repeats=1',
    ]);
    expect(text.split('\r\n')).toHaveLength(4 + 24 + 1);
    expect(text).toMatch(/^\uFEFF# Coupon of the design: Rain-gauge funnel\.\r\n/);
    const { code, out, written } = run(['plan', 'coupon', '--out', 'coupon.csv']);
    expect([code, out]).toEqual([0, expect.stringMatching(/^coupon\.csv: 72 spots, .* apart\.\n$/)]);
    expect(readSpotFile(new TextDecoder().decode(written['coupon.csv']), 'c').unmeasured).toHaveLength(72);
  });

  it.each([
    [['plan'], /use plan coupon/],
    [['plan', 'coupon', '--out', 'nowhere/a.csv'], /cannot be written/],
    [['plan', 'coupon', '--radii', '3'], /no option --radii/],
  ])('%j is refused', (argv, says) => {
    const { code, err } = run(argv);
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });
});
