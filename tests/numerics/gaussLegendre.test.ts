import { describe, expect, it } from 'vitest';
import { gaussLegendre, panelledRule } from '../../lib/numerics/gaussLegendre.ts';
import { expectClose } from '../close.ts';

const counts = [1, 2, 3, 5, 16, 24, 40, 64, 128, 255, 512];

describe('Gauss–Legendre rules', () => {
  it('two, three and five nodes in closed form', () => {
    const source = 'Abramowitz & Stegun, table 25.4 (memory)';
    const near = { absolute: 1e-15, source };
    expectClose(gaussLegendre(1).nodes[0]!, 0, near);
    expectClose(gaussLegendre(2).nodes[1]!, 1 / Math.sqrt(3), near);
    expectClose(gaussLegendre(3).nodes[2]!, Math.sqrt(0.6), near);
    expectClose(gaussLegendre(3).weights[1]!, 8 / 9, near);
    expectClose(gaussLegendre(5).nodes[4]!, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3, near);
    expectClose(gaussLegendre(5).weights[0]!, (322 - 13 * Math.sqrt(70)) / 900, near);
  });

  for (const count of counts) {
    it(`${count} nodes: ascending, symmetric, weights add up to 2`, () => {
      const { nodes, weights } = gaussLegendre(count);
      expect([nodes.length, weights.length]).toEqual([count, count]);
      nodes.forEach((x, i) => {
        expect(Math.abs(x)).toBeLessThan(1);
        expect(weights[i]).toBeGreaterThan(0);
        if (i > 0) expect(x).toBeGreaterThan(nodes[i - 1]!);
        expectClose(x, -nodes[count - 1 - i]!, { absolute: 1e-15 });
      });
      expectClose(
        weights.reduce((sum, weight) => sum + weight, 0),
        2,
        { absolute: 1e-14, source: 'length of [−1, 1]' },
      );
    });
  }

  it('integrate powers up to 2n − 1 exactly: ∫ x^k = 2/(k + 1) for even k', () => {
    for (const count of [1, 2, 3, 5, 16, 24, 40]) {
      const { nodes, weights } = gaussLegendre(count);
      for (let k = 0; k <= 2 * count - 1; k++) {
        const sum = nodes.reduce((total, x, i) => total + weights[i]! * x ** k, 0);
        expectClose(sum, k % 2 ? 0 : 2 / (k + 1), { absolute: 2e-15, source: 'exact for polynomials' });
      }
      const beyond = nodes.reduce((total, x, i) => total + weights[i]! * x ** (2 * count), 0);
      if (count <= 5) expect(Math.abs(beyond - 2 / (2 * count + 1))).toBeGreaterThan(1e-4);
    }
  });

  it('panels of unequal width integrate eˣ to rounding', () => {
    const { nodes, weights } = panelledRule([-1, -0.3, 0.1, 2, 2.5], 16);
    expect(nodes).toHaveLength(64);
    const sum = nodes.reduce((total, x, i) => total + weights[i]! * Math.exp(x), 0);
    expectClose(sum, Math.exp(2.5) - Math.exp(-1), { relative: 2e-15, source: 'closed form' });
  });

  it('the same rule is made once', () => {
    expect(gaussLegendre(24)).toBe(gaussLegendre(24));
  });
});
