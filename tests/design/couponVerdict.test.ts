import { describe, expect, it } from 'vitest';
import type { PlannedCoupon } from '../../lib/design/coupon.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import type { PlaneVerdict } from '../../lib/process/planeVerdict.ts';
import { couponCsv } from '../../notebooks/couponTable.ts';
import { outcomesOf, type Values } from '../notebooks/designOutcomes.ts';

/** Made at 0.18 J/cm²; planned with the handbook's. */
const threshold = 1800;
const start: Values = { 'coupon.lowEnergy': 0.4e-6, 'coupon.highEnergy': 8e-6, 'coupon.energyCount': 9 };
const planOf = (design: Values) =>
  (outcomesOf({ ...start, ...design })('coupon.plan') as { value: PlannedCoupon }).value;
const made = planOf({ 'threshold.source': 'typed', 'threshold.typedFluence': threshold });

/** The planned table filled in with marks of `source`, areas as discs, with 2 % scatter of the diameters. */
function fill(source: PlannedCoupon): string {
  const random = createRandom(23);
  let row = 0;
  return couponCsv(planOf({}))
    .split('\r\n')
    .map((line) => {
      const cells = line.split(',');
      if (!/^\d+$/.test(cells[0]!)) return line;
      const { area } = source.spots[row++]!.mark;
      const diameter = 2e6 * Math.sqrt(area / Math.PI) * (1 + 0.02 * random.normal());
      cells[10] = diameter.toFixed(2);
      return cells.join(',');
    })
    .join('\r\n');
}

const verdictsOf = (text: string, design: Values = {}) => {
  const inputs = { ...start, ...design, 'threshold.spotTable': readSpotFile(text, 'coupon.csv') };
  return (outcomesOf(inputs)('coupon.planeVerdicts') as { value: readonly PlaneVerdict[] }).value;
};

describe('a coupon that comes back filled', () => {
  it('confirms every plane, at the threshold that it was made with', () => {
    const verdicts = verdictsOf(fill(made));
    expect(verdicts.map(({ z, verdict }) => [z, verdict])).toEqual(
      [-1e-4, 0, 1e-4].map((z) => [z, 'confirmed']),
    );
    for (const { threshold: found } of verdicts)
      expect(Math.abs(found!.value - threshold)).toBeLessThan(4 * found!.uncertainty);
  });

  it('made a Rayleigh length off, it confirms not all', () => {
    const off = planOf({
      'threshold.source': 'typed',
      'threshold.typedFluence': threshold,
      'coupon.firstZ': 0.1e-3,
      'coupon.lastZ': 0.3e-3,
    });
    const verdicts = verdictsOf(fill(off));
    const wrong = verdicts.filter(({ verdict }) => verdict === 'not confirmed');
    expect(wrong.length).toBeGreaterThan(0);
    for (const { reasons } of wrong) expect(reasons.join(' ')).toMatch(/\.$/);
  });

  it('says why a plane too far from the focus cannot be told', () => {
    const far = fill(made).replaceAll(',0.1,1,', ',60,1,');
    const last = verdictsOf(far).at(-1)!;
    expect(last).toMatchObject({ verdict: 'undecided', threshold: null });
    expect(last.reasons[0]).toMatch(/\.$/);
  });
});
