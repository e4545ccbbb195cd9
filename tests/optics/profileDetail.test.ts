import { describe, expect, it } from 'vitest';
import { panelNodes } from '../../lib/numerics/panelledFunction.ts';
import { deepestOf, ringAround } from '../../lib/optics/profileDetail.ts';
import type { RadialProfile } from '../../lib/optics/radialProfile.ts';
import { expectClose } from '../close.ts';

/** A profile of 60 panels of a tenth; 12 nodes each carry these curves to 1e-12. */
function profileOf(height: (r: number) => number): RadialProfile {
  const { nodes, weights } = panelNodes(0.1, 60, 12);
  return { width: 0.1, count: 12, nodes, weights, values: nodes.map(height) };
}
const bump = (r: number, at: number, width: number) => Math.exp(-(((r - at) / width) ** 2));

describe('a ring around a peak', () => {
  it('is found where it reaches above half the peak, the highest of several', () => {
    const one = ringAround(profileOf((r) => bump(r, 0, 0.5) + 0.6 * bump(r, 3, 0.4)))!;
    // Peak and ring are 1e-14 of each other where the other one is highest.
    expectClose(one.radius, 3, { relative: 1e-6, source: 'the curve itself' });
    expectClose(one.height, 0.6, { relative: 1e-9, source: 'the curve itself' });
    const two = ringAround(
      profileOf((r) => bump(r, 0, 0.3) + 0.6 * bump(r, 2, 0.3) + 0.8 * bump(r, 4, 0.3)),
    )!;
    expectClose(two.radius, 4, { relative: 1e-6, source: 'the curve itself' });
  });

  it('is none below half the peak, and inside a crest', () => {
    expect(ringAround(profileOf((r) => bump(r, 0, 0.5) + 0.49 * bump(r, 3, 0.4)))).toBeUndefined();
    expect(ringAround(profileOf((r) => 0.7 * bump(r, 0, 0.4) + bump(r, 3, 0.4)))).toBeUndefined();
  });
});

describe('the lowest place of a plateau', () => {
  // 1 − 0.1 sin²(πr) falls to 0.9 at r = ½, and ends behind its crest at r = 1.
  const edge = (r: number) => (r < 1 ? 1 : bump(r, 1, 0.5));
  it('is a trough around the axis', () => {
    const deepest = deepestOf(
      profileOf((r) => (1 - 0.1 * Math.sin(Math.PI * Math.min(r, 1)) ** 2) * edge(r)),
    )!;
    expectClose(deepest, 0.1, { relative: 1e-3, source: 'the curve itself' });
  });

  it('is the dip where the axis is lowest, and 0 where it is highest', () => {
    const hollow = deepestOf(
      profileOf((r) => (1 - 0.1 * Math.cos((Math.PI * Math.min(r, 1)) / 2) ** 2) * edge(r)),
    )!;
    expectClose(hollow, 0.1, { relative: 1e-3, source: 'the curve itself' });
    expect(deepestOf(profileOf((r) => bump(r, 0, 1)))).toBe(0);
  });
});
