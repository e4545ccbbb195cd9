import { describe, expect, it } from 'vitest';
import { correlationOf } from '../../lib/numerics/correlatedResiduals.ts';
import { createRandom } from '../../lib/numerics/random.ts';

/** A process of first order: ρ_k = a^k. */
function process(a: number, count: number, seed: number): Float64Array {
  const random = createRandom(seed);
  let value = random.normal();
  return Float64Array.from({ length: count }, () => {
    value = a * value + Math.sqrt(1 - a * a) * random.normal();
    return value;
  });
}

describe('correlated residuals', () => {
  it.each([0, 0.5, 0.9])('of first order, ρ = %s: variances (1 + ρ)/(1 − ρ) times as large', (a) => {
    const { inflation, length } = correlationOf(process(a, 20_000, 3));
    const expected = (1 + a) / (1 - a);
    // The sum over a window of five times itself scatters by √(2·2·5τ/n) of itself.
    expect(Math.abs(inflation / expected - 1)).toBeLessThan(3 * Math.sqrt((20 * expected) / 20_000));
    const efolding = a === 0 ? 0 : -1 / Math.log(a);
    expect(Math.abs(length - efolding)).toBeLessThan(0.1 * efolding + 0.1);
  });

  it('are no more alike than one another where they alternate, or do not differ', () => {
    expect(correlationOf(Float64Array.from({ length: 50 }, (_, i) => (-1) ** i)).inflation).toBe(1);
    expect(correlationOf(new Float64Array(50).fill(2))).toEqual({ inflation: 1, length: 0 });
  });

  it('stay finite where they follow one slow curve', () => {
    const { inflation, length } = correlationOf(
      Float64Array.from({ length: 60 }, (_, i) => Math.sin(i / 20)),
    );
    expect(inflation).toBeGreaterThan(10);
    expect(inflation).toBeLessThanOrEqual(100);
    expect(length).toBeGreaterThan(5);
  });
});
