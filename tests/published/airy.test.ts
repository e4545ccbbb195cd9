import { describe, expect, test } from 'vitest';
import { panelledRule } from '../../lib/numerics/gaussLegendre.ts';
import { findRoot } from '../../lib/numerics/roots.ts';
import { energyThroughStop } from '../../lib/optics/farTail.ts';
import { fieldAt } from '../../lib/optics/focalField.ts';
import { expectClose } from '../close.ts';
import { reference } from '../reference.ts';

const { airy } = reference('apertures');
const book = 'M. Born & E. Wolf, Principles of Optics, ch. 8 (memory)';

/** Stop ratio R/w of a beam far wider than the stop: the amplitude falls by (R/w)² = 1e-8 to the edge. */
const stopRatio = 1e-4;
const disc = [{ outer: stopRatio, phase: 0 }];
/** Irradiance against that in the focus at v = 2ϱR/w and u = 2ζR²/w². */
const peak = fieldAt(disc, 0, 0).re ** 2;
function irradiance(v: number, u = 0): number {
  const { re, im } = fieldAt(disc, v / (2 * stopRatio), u / (2 * stopRatio ** 2));
  return (re * re + im * im) / peak;
}

describe('uniformly lit circle', () => {
  test.each([
    [1, 3.8317, 0.838],
    [2, 7.0156, 0.91],
    [3, 10.1735, 0.938],
  ])('dark ring %i at v = %f holds %f of the energy', (ring, published, energy) => {
    // On the axis of symmetry the field is real: its zero is a sign change.
    const amplitude = (v: number) => fieldAt(disc, v / (2 * stopRatio), 0).re;
    const v = findRoot(amplitude, published - 0.3, published + 0.3);
    expectClose(v, published, { absolute: 5.1e-5, source: book });
    expectClose(v, airy.dark_rings_v[ring - 1], {
      relative: 2e-8,
      source: 'zeros of J1, 25 digits; (R/w)² = 1e-8',
    });
    const rule = panelledRule([0, v / 3, (2 * v) / 3, v], 24);
    // ∫|U|² 2πϱ dϱ against (π/2)(1 − e^{−2R²/w²}); with v: ∫ (2J1(v)/v)² v dv / 2.
    const inside = rule.nodes.reduce(
      (sum, node, i) => sum + rule.weights[i]! * irradiance(node) * (node / 2),
      0,
    );
    expectClose(inside, energy, { absolute: 5.1e-4, source: book });
    expectClose(inside, airy.energy_inside_dark_rings[ring - 1], {
      relative: 2e-8,
      source: '1 − J0² − J1², 25 digits',
    });
  });

  test('bright rings', () => {
    [0.0175, 0.0042, 0.0016].forEach((published, i) => {
      const height = irradiance(airy.bright_rings_v[i]);
      expectClose(height, published, { absolute: 5.1e-5, source: book });
      expectClose(height, airy.bright_rings_I[i], { relative: 1e-7, source: '25 digits' });
    });
  });

  test('on the axis (sin(u/4)/(u/4))², dark at u = 4πn', () => {
    for (const n of [1, 2, 3]) expect(irradiance(0, 4 * Math.PI * n)).toBeLessThan(1e-15);
    for (const u of [1, 5, 9, 20]) {
      const expected = (Math.sin(u / 4) / (u / 4)) ** 2;
      expectClose(irradiance(0, u), expected, { absolute: 2e-8, source: book });
    }
  });

  test.each([0.3, 0.5, 2 ** -0.5, 0.8])('a π step at a/R = %f leaves (1 − 2a²/R²)² in the focus', (ratio) => {
    const zones = [
      { outer: ratio * stopRatio, phase: Math.PI },
      { outer: stopRatio, phase: 0 },
    ];
    const { re, im } = fieldAt(zones, 0, 0);
    const expected = (1 - 2 * ratio ** 2) ** 2;
    expectClose((re * re + im * im) / peak, expected, {
      absolute: 2e-8,
      source: 'Strehl ratio, closed form',
    });
  });
});

test('a 14 mm stop on a 10 mm beam: R/w = 1.4, 2.0 % lost', () => {
  const lost = 1 - energyThroughStop(14e-3 / 10e-3);
  expectClose(lost, 0.02, { absolute: 5e-4, source: 'e^{−2·1.4²} to two digits' });
  expectClose(lost, Math.exp(-3.92), { relative: 1e-12, source: 'closed form' });
});
