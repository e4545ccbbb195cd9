import { describe, expect, it } from 'vitest';
import {
  addInterpolationRow,
  integrateOver,
  type PanelledFunction,
  panelNodes,
  reachOf,
  valueAt,
} from '../../lib/numerics/panelledFunction.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { expectClose } from '../close.ts';

function sample(g: (r: number) => number, width: number, panels: number, count: number): PanelledFunction {
  const { nodes, weights } = panelNodes(width, panels, count);
  return { width, count, nodes, weights, values: nodes.map(g) };
}

const bell = (r: number) => Math.exp(-2 * r * r);
/** Panels half a radius wide: 16 nodes resolve the bell to rounding. */
const held = sample(bell, 0.5, 6, 16);
const random = createRandom(8);
const radii = [0, 0.5, 1, 2.5, 3, ...Array.from({ length: 200 }, () => random.between(0, 3))];

describe('a function held at Gauss–Legendre nodes', () => {
  it('gives back values at nodes, between them and at panel edges', () => {
    held.nodes.forEach((r, i) => {
      expectClose(valueAt(held, r), held.values[i]!, { absolute: 1e-14 });
    });
    for (const r of radii) expectClose(valueAt(held, r), bell(r), { absolute: 2e-14, source: 'closed form' });
  });

  it('gives back polynomials below the order of the panels', () => {
    const cubic = (r: number) => 1 - 2 * r + 0.5 * r ** 3;
    const four = sample(cubic, 1.5, 2, 4);
    for (const r of radii) expectClose(valueAt(four, r), cubic(r), { absolute: 1e-13, source: 'exact' });
  });

  it('is 0 beyond its reach and below 0', () => {
    expect(reachOf(held)).toBe(3);
    expect(valueAt(held, 3.001)).toBe(0);
    expect(valueAt(held, -0.001)).toBe(0);
  });

  it('interpolates by a matrix row as it does directly', () => {
    for (const r of [...radii.filter((x) => x < 3), ...held.nodes.slice(0, 20)]) {
      const row = new Float64Array(held.nodes.length);
      addInterpolationRow(held, r, 3, row);
      const sum = row.reduce((total, weight, i) => total + weight * held.values[i]!, 0);
      expectClose(sum, 3 * valueAt(held, r), { absolute: 1e-13, source: 'valueAt' });
    }
    const row = new Float64Array(held.nodes.length);
    addInterpolationRow(held, 5, 1, row);
    expect(row.every((weight) => weight === 0)).toBe(true);
  });

  it('integrates over any interval: ∫ e^{−2r²} r dr in closed form', () => {
    for (const [from, to] of [
      [0, 3],
      [0.1, 0.2],
      [0.3, 2.7],
      [0.5, 1],
      [1, 1],
    ] as const) {
      const exact = (bell(from) - bell(to)) / 4;
      const integral = integrateOver(held, from, to, (value, r) => value * r);
      expectClose(integral, exact, { absolute: 1e-14, source: 'closed form' });
    }
    const whole = held.weights.reduce((sum, weight, i) => sum + weight * held.values[i]! * held.nodes[i]!, 0);
    expectClose(whole, (1 - bell(3)) / 4, { absolute: 1e-14, source: 'closed form' });
  });
});
